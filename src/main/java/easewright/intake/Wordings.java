package easewright.intake;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds phrases word for word and in order. A piece of the garment may be named by any of its
 * names, or by "it" and "them" where it was the last one named; a denial by any denial.
 */
final class Wordings {
  private static final Set<String> SKIPPED =
      Set.of(
          "the", "a", "an", "my", "our", "her", "both", "each", "some", "of", "by", "to", "is",
          "are", "was", "were", "be", "being", "at", "on", "from", "for", "that", "this", "these");
  private static final Set<String> PRONOUNS = Set.of("it", "them", "they", "those", "these", "both");
  private static final Set<String> PARTICLES = Set.of("in", "out", "up", "down", "off", "apart");

  /** What the stemmer leaves apart. */
  private static final Map<String, String> ONE_VERB =
      Map.of("take", "took", "taken", "took", "make", "made", "sewn", "sew", "given", "gave");

  private static final String NO = "no";
  private static final String PART = "part ";
  private static final double SURE = 0.9;

  private final Lexicon lexicon;
  private final int mostBetween;
  private final Map<String, List<Wording>> byFirst = new HashMap<>();

  private record Wording(Saying saying, List<String> tokens) {}

  /**
   * @param mostBetween how many other words, amounts and small words apart, may stand between two
   *     of a phrase
   */
  Wordings(Map<String, List<String>> phrasesById, Lexicon lexicon, int mostBetween) {
    this.lexicon = lexicon;
    this.mostBetween = mostBetween;
    phrasesById.forEach((id, phrases) -> phrases.forEach(phrase -> add(id, phrase)));
  }

  private void add(String id, String phrase) {
    Post post = lexicon.read(phrase);
    List<String> tokens = new ArrayList<>();
    for (int i = 0; i < post.words().size(); i++) {
      Mention part = part(post, i);
      if (part != null) {
        tokens.add(PART + part.name());
        i = part.last();
      } else if (isNo(post, i)) {
        tokens.add(NO);
      } else if (!SKIPPED.contains(post.words().get(i).plain())) {
        tokens.add(word(post, i));
      }
    }
    if (!tokens.isEmpty()) {
      add(new Wording(new Saying(id, phrase, tokens, false), tokens));
    }
    // "took in the band" is also "took the band in"
    if (tokens.size() == 3 && PARTICLES.contains(tokens.get(1)) && tokens.get(2).startsWith(PART)) {
      List<String> turned = List.of(tokens.get(0), tokens.get(2), tokens.get(1));
      add(new Wording(new Saying(id, phrase, turned, false), turned));
    }
  }

  private void add(Wording wording) {
    byFirst.computeIfAbsent(wording.tokens().get(0), any -> new ArrayList<>()).add(wording);
  }

  /** Every phrase found, those whose words are all part of a fuller one left out. */
  List<Match> in(Post post, List<Amount> amounts) {
    BitSet skipped = new BitSet();
    for (int i = 0; i < post.words().size(); i++) {
      skipped.set(i, SKIPPED.contains(post.words().get(i).plain()));
    }
    for (Amount amount : amounts) {
      int last = Whereabouts.wordAt(post, amount.span().to() - 1);
      skipped.set(Whereabouts.wordAt(post, amount.span().from()), last + 1);
    }
    List<Match> all = new ArrayList<>();
    for (int i = 0; i < post.words().size(); i++) {
      for (String token : tokens(post, i)) {
        for (Wording wording : byFirst.getOrDefault(token, List.of())) {
          Match match = match(wording, post, i, skipped);
          if (match != null) {
            all.add(match);
          }
        }
      }
    }
    return all.stream()
        .filter(one -> all.stream().noneMatch(other -> other != one && isFuller(other, one)))
        .toList();
  }

  private static boolean isFuller(Match one, Match other) {
    boolean within = one.first() <= other.last() && other.first() <= one.last();
    return within && one.weight() > other.weight();
  }

  private Match match(Wording wording, Post post, int first, BitSet skipped) {
    List<Mention> said = new ArrayList<>();
    int at = first;
    for (String token : wording.tokens()) {
      Mention here = said.isEmpty() ? at(post, token, at) : next(post, token, at, skipped);
      if (here == null) {
        return null;
      }
      said.add(here);
      at = here.last() + 1;
    }
    return new Match(wording.saying(), said, said, said.size(), SURE);
  }

  private Mention next(Post post, String token, int from, BitSet skipped) {
    int between = 0;
    for (int i = from; i < post.words().size() && between <= mostBetween; i++) {
      if (post.breaks().get(i).compareTo(Post.Break.PAUSE) >= 0) {
        return null;
      }
      Mention here = at(post, token, i);
      if (here != null) {
        return here;
      }
      between += skipped.get(i) ? 0 : 1;
    }
    return null;
  }

  private Mention at(Post post, String token, int i) {
    if (token.startsWith(PART)) {
      String name = token.substring(PART.length());
      Mention part = part(post, i);
      if (part != null && part.name().equals(name)) {
        return part;
      }
      boolean meant =
          PRONOUNS.contains(post.words().get(i).plain()) && name.equals(topic(post, i));
      return meant ? new Mention(name, i, i, 1) : null;
    }
    boolean here = token.equals(NO) ? isNo(post, i) : word(post, i).equals(token);
    return here ? new Mention("=" + token, i, i, 1) : null;
  }

  private static String word(Post post, int i) {
    String stem = post.words().get(i).stem();
    return ONE_VERB.getOrDefault(stem, stem);
  }

  private List<String> tokens(Post post, int i) {
    List<String> tokens = new ArrayList<>(List.of(word(post, i)));
    Mention part = part(post, i);
    if (part != null) {
      tokens.add(PART + part.name());
    } else if (PRONOUNS.contains(post.words().get(i).plain())) {
      tokens.add(PART + topic(post, i));
    }
    if (isNo(post, i)) {
      tokens.add(NO);
    }
    return tokens;
  }

  /** The piece named from this word on, by its longest name. */
  private Mention part(Post post, int i) {
    Mention longest = null;
    for (Mention one : post.mentions()) {
      if (one.first() == i
          && lexicon.isPart(one.name())
          && one.last() - one.first() + 1 == one.words()
          && (longest == null || one.words() > longest.words())) {
        longest = one;
      }
    }
    return longest;
  }

  /** The piece last named in this sentence or the one before. */
  private String topic(Post post, int word) {
    Mention last = null;
    for (Mention one : post.mentions()) {
      if (lexicon.isPart(one.name())
          && one.last() < word
          && post.sentence()[word] - post.sentence()[one.first()] <= 1
          && (last == null || one.first() >= last.first())) {
        last = one;
      }
    }
    return last == null ? "" : last.name();
  }

  private static boolean isNo(Post post, int i) {
    return post.cues("no").stream().anyMatch(no -> no.first() == i && no.last() == i);
  }
}
