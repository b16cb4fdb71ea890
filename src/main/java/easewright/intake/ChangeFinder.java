package easewright.intake;

import easewright.intake.Reading.ChangeRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds changes that were made, and what they did. */
final class ChangeFinder {

  private static final int FARTHEST_AMOUNT = 4;

  private final Wordings wordings;
  private final double mostMm;

  ChangeFinder(EverydayWords words, Lexicon lexicon) {
    this.mostMm = lexicon.bounds().of("largest-change-read");
    this.wordings = new Wordings(words.changes(), lexicon, 2);
  }

  List<ChangeRead> in(Post post, List<Amount> amounts) {
    List<ChangeRead> found = new ArrayList<>();
    for (Match match : wordings.in(post, amounts)) {
      String id = match.saying().of();
      if (found.stream().noneMatch(one -> one.adjustment().equals(id)) && isDone(match, post)) {
        found.add(
            new ChangeRead(
                id,
                amount(match, post, amounts),
                OutcomeWords.of(match, post),
                post.span(match.first(), match.last()),
                match.confidence()));
      }
    }
    return found;
  }

  /** Told in the past tense, and neither asked about nor denied nor put off. */
  private static boolean isDone(Match match, Post post) {
    int from = Whereabouts.clauseStart(post, match.first());
    boolean done = false;
    for (int i = from; i <= match.last(); i++) {
      String word = post.words().get(i).plain();
      if (post.lists().has("to do", word) && i < match.first()
          || post.words().get(i).plain().equals("to") && i == match.first() - 1) {
        return false;
      }
      done |= isPast(post, i, from);
    }
    boolean denied =
        post.cues("no").stream()
            .anyMatch(
                no ->
                    no.first() < match.first()
                        && match.first() - no.last() <= 4
                        && post.clause()[no.first()] == post.clause()[match.first()]);
    return done && !denied;
  }

  private static boolean isPast(Post post, int i, int clause) {
    String word = post.words().get(i).plain();
    String before = i == 0 ? "" : post.words().get(i - 1).plain();
    if (post.lists().has("past or present", word)) {
      return i == clause && post.breaks().get(i).compareTo(Post.Break.PAUSE) >= 0
          || post.lists().has("doers", before);
    }
    return post.lists().has("past tenses", word)
        || word.length() > 4 && word.endsWith("ed") && !word.endsWith("eed")
        || word.endsWith("ing") && post.lists().has("repeated", before);
  }

  /** The amount within the phrase or right beside it, no new thing being spoken of between. */
  private String amount(Match match, Post post, List<Amount> amounts) {
    TextSpan span = post.span(match.first(), match.last());
    return amounts.stream()
        .filter(Amount::isLength)
        .filter(one -> one.mm("mm") <= mostMm)
        .filter(one -> isBeside(one, match, post))
        .min(Comparator.comparingInt(one -> Whereabouts.wordsBetween(post, one.span(), span)))
        .map(one -> inAll(one, match, post))
        .map(one -> one.text("mm"))
        .orElse(null);
  }

  /** "1 cm at each side seam" is 2 cm off a band that goes all the way round. */
  private static Amount inAll(Amount amount, Match match, Post post) {
    boolean round = post.lists().has("changes of the whole way round", match.saying().of());
    return round && amount.isPerSide(post) ? amount.doubled() : amount;
  }

  private static boolean isBeside(Amount amount, Match match, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    if (first > match.last()) {
      Post.Break strongest = post.strongest(match.last(), first - 1);
      return first - match.last() - 1 <= FARTHEST_AMOUNT
          && strongest == Post.Break.NONE
          && post.breaks().get(first).compareTo(Post.Break.PAUSE) <= 0
          && !isMaterial(post, last);
    }
    return match.first() - last - 1 <= FARTHEST_AMOUNT
        && post.strongest(Math.min(last, match.first()), match.first()) == Post.Break.NONE
        && (last > match.first() || !isMaterial(post, last));
  }

  /** "3 cm elastic" is what it is made of, not by how much it was changed. */
  private static boolean isMaterial(Post post, int last) {
    return last + 1 < post.words().size()
        && post.lists().has("made of so much", post.words().get(last + 1).plain());
  }
}
