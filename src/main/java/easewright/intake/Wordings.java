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
          "the", "a", "an", "my", "our", "her", "both", "each", "some", "of", "to", "is", "are",
          "was", "were", "be", "being", "at", "on", "from", "for", "that", "this", "these");
  private static final Set<String> PRONOUNS = Set.of("it", "them", "they", "those", "one", "both");
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
    Ground ground = new Ground(post, List.of());
    List<String> tokens = new ArrayList<>();
    for (int i = 0; i < ground.size(); i++) {
      if (ground.parts[i] != null) {
        tokens.add(PART + ground.parts[i].name());
        i = ground.parts[i].last();
      } else if (ground.no.get(i)) {
        tokens.add(NO);
      } else if (!ground.isSkipped(i)) {
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
    Ground ground = new Ground(post, amounts);
    List<Match> all = new ArrayList<>();
    for (int i = 0; i < post.words().size(); i++) {
      for (String token : ground.tokens(i)) {
        for (Wording wording : byFirst.getOrDefault(token, List.of())) {
          Match match = match(wording, ground, i);
          if (match != null) {
            all.add(match);
          }
        }
      }
    }
    return all.stream()
        .filter(one -> all.stream().noneMatch(other -> isFuller(other, one)))
        .toList();
  }

  private static boolean isFuller(Match one, Match other) {
    boolean touch = one.first() <= other.last() && other.first() <= one.last();
    return touch && one.weight() > other.weight();
  }

  private Match match(Wording wording, Ground ground, int first) {
    List<Mention> said = new ArrayList<>();
    int at = first;
    for (String token : wording.tokens()) {
      boolean afterNo = !said.isEmpty() && said.get(said.size() - 1).name().equals("=" + NO);
      int most = afterNo ? Math.min(1, mostBetween) : mostBetween;
      Mention here = said.isEmpty() ? ground.at(token, at) : next(token, ground, at, most);
      if (here == null) {
        return null;
      }
      said.add(here);
      at = here.last() + 1;
    }
    return new Match(wording.saying(), said, said, said.size(), SURE);
  }

  private static Mention next(String token, Ground ground, int from, int most) {
    int between = 0;
    for (int i = from; i < ground.size() && between <= most && ground.goesOn(i); i++) {
      Mention here = ground.at(token, i);
      if (here != null) {
        return here;
      }
      if (ground.isOther(i)) {
        return null;
      }
      between += ground.isSkipped(i) ? 0 : 1;
    }
    return null;
  }

  private static String word(Post post, int i) {
    String stem = post.words().get(i).stem();
    return ONE_VERB.getOrDefault(stem, stem);
  }

  /** A post, and what each of its words may stand for. */
  private final class Ground {
    private final Post post;
    private final Mention[] parts;
    private final String[] topics;
    private final BitSet no = new BitSet();
    private final BitSet amounts = new BitSet();
    private final BitSet skipped = new BitSet();

    Ground(Post post, List<Amount> amounts) {
      this.post = post;
      int size = post.words().size();
      this.parts = new Mention[size];
      this.topics = new String[size];
      for (Mention one : post.mentions()) {
        boolean verb = post.words().get(one.first()).plain().endsWith("ed"); // "scooped the neck"
        boolean whole = one.last() - one.first() + 1 == one.words() && !verb;
        Mention other = parts[one.first()];
        if (lexicon.isPart(one.name()) && whole && (other == null || one.words() > other.words())) {
          parts[one.first()] = one;
        }
      }
      Mention last = null;
      for (int i = 0; i < size; i++) {
        boolean near = last != null && post.sentence()[i] - post.sentence()[last.first()] <= 1;
        topics[i] = near ? last.name() : "";
        last = parts[i] == null ? last : parts[i];
        skipped.set(i, SKIPPED.contains(post.words().get(i).plain()));
      }
      post.cues("no").stream()
          .filter(one -> one.first() == one.last())
          .forEach(one -> no.set(one.first()));
      for (Amount amount : amounts) {
        int end = Whereabouts.wordAt(post, amount.span().to() - 1);
        this.amounts.set(Whereabouts.wordAt(post, amount.span().from()), end + 1);
      }
      skipped.or(this.amounts);
    }

    int size() {
      return post.words().size();
    }

    boolean isSkipped(int i) {
      return skipped.get(i);
    }

    boolean goesOn(int i) {
      // the stroke of "3/4" is no pause
      boolean amount = i > 0 && amounts.get(i) && amounts.get(i - 1);
      return amount || post.breaks().get(i).compareTo(Post.Break.PAUSE) < 0;
    }

    /** Whether another piece, or another thing said, begins here. */
    boolean isOther(int i) {
      return parts[i] != null || post.breaks().get(i) == Post.Break.JOIN;
    }

    Mention at(String token, int i) {
      if (token.startsWith(PART)) {
        String name = token.substring(PART.length());
        if (parts[i] != null && parts[i].name().equals(name)) {
          return parts[i];
        }
        return isPronoun(i) && name.equals(topics[i]) ? new Mention(name, i, i, 1) : null;
      }
      boolean here = token.equals(NO) ? no.get(i) : word(post, i).equals(token);
      return here ? new Mention("=" + token, i, i, 1) : null;
    }

    private boolean isPronoun(int i) {
      return PRONOUNS.contains(post.words().get(i).plain());
    }

    List<String> tokens(int i) {
      List<String> tokens = new ArrayList<>(List.of(word(post, i)));
      if (parts[i] != null) {
        tokens.add(PART + parts[i].name());
      } else if (isPronoun(i)) {
        tokens.add(PART + topics[i]);
      }
      if (no.get(i)) {
        tokens.add(NO);
      }
      return tokens;
    }
  }
}
