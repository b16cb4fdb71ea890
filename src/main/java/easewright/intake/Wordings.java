package easewright.intake;

import easewright.english.Mention;
import easewright.number.Amount;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds phrases word for word and in order. A piece of the garment may be named by any of its
 * names, or by "it" and "them" where it was the last one named; a denial by any denial.
 */
final class Wordings {

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
    TokenizedPost tokenized = new TokenizedPost(post, List.of(), lexicon);
    List<String> tokens = tokenized.phrase();
    if (!tokens.isEmpty()) {
      add(new Wording(new Saying(id, phrase, tokens, false), tokens));
    }
    // "took in the band" is also "took the band in"
    if (tokens.size() == 3
        && post.lists().has("particles", tokens.get(1))
        && tokens.get(2).startsWith(TokenizedPost.PART)) {
      List<String> turned = List.of(tokens.get(0), tokens.get(2), tokens.get(1));
      add(new Wording(new Saying(id, phrase, turned, false), turned));
    }
  }

  private void add(Wording wording) {
    byFirst.computeIfAbsent(wording.tokens().get(0), any -> new ArrayList<>()).add(wording);
  }

  /** Every phrase found, those whose words are all part of a fuller one left out. */
  List<Match> in(Post post, List<Amount> amounts) {
    TokenizedPost tokenized = new TokenizedPost(post, amounts, lexicon);
    List<Match> all = new ArrayList<>();
    for (int i = 0; i < post.words().size(); i++) {
      for (String token : tokenized.tokens(i)) {
        for (Wording wording : byFirst.getOrDefault(token, List.of())) {
          Match match = match(wording, tokenized, i);
          if (match != null) {
            all.add(match);
          }
        }
      }
    }
    return fullest(all, post.words().size());
  }

  /** Those of which no word is said in a fuller phrase too. */
  private static List<Match> fullest(List<Match> all, int words) {
    double[] best = new double[words];
    for (Match one : all) {
      for (int i = one.first(), last = one.last(); i <= last; i++) {
        best[i] = Math.max(best[i], one.weight());
      }
    }
    List<Match> kept = new ArrayList<>();
    for (Match one : all) {
      double most = Arrays.stream(best, one.first(), one.last() + 1).max().orElse(0);
      if (most <= one.weight()) {
        kept.add(one);
      }
    }
    return kept;
  }

  private Match match(Wording wording, TokenizedPost tokenized, int first) {
    List<Mention> said = new ArrayList<>();
    int at = first;
    for (String token : wording.tokens()) {
      boolean afterNo =
          !said.isEmpty() && said.get(said.size() - 1).name().equals("=" + TokenizedPost.NO);
      int most = afterNo ? Math.min(1, mostBetween) : mostBetween;
      Mention here = said.isEmpty() ? tokenized.at(token, at) : next(token, tokenized, at, most);
      if (here == null) {
        return null;
      }
      said.add(here);
      at = here.last() + 1;
    }
    return new Match(wording.saying(), said, said, said.size(), SURE);
  }

  private static Mention next(String token, TokenizedPost tokenized, int from, int most) {
    int between = 0;
    for (int i = from; i < tokenized.size() && between <= most && tokenized.goesOn(i); i++) {
      Mention here = tokenized.at(token, i);
      if (here != null) {
        return here;
      }
      if (tokenized.isOther(i)) {
        return null;
      }
      between += tokenized.isSkipped(i) ? 0 : 1;
    }
    return null;
  }
}
