package easewright.intake;

import easewright.english.Break;
import easewright.english.Stretch;
import easewright.intake.Reading.ChangeRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds changes that were made, and what they did. */
final class ChangeFinder {

  private static final int REACH_OF_NO = 4;
  private static final int NEXT_TO = 2;

  /** As far after advice as may be said that it was followed; in words. */
  private static final int FARTHEST_DONE = 8;

  /** As far after a change as may be told what it is compared with; in words. */
  private static final int FARTHEST_PLAN = 5;

  /** As far back as the verb of a change is looked for; in words. */
  private static final int LONGEST_CLAUSE = 40;

  private final Wordings wordings;
  private final ChangeAmounts amounts;
  private final Map<String, AdjustmentEntry> catalog;

  ChangeFinder(RuleBookSource book, Lexicon lexicon) {
    this.amounts = new ChangeAmounts(book, lexicon);
    this.catalog = book.catalog().adjustments();
    this.wordings = new Wordings(book.everyday().changes(), lexicon, 2);
  }

  /**
   * @param taken words that speak of something else
   */
  List<ChangeRead> in(Post post, List<Amount> amounts, BitSet taken) {
    List<ChangeRead> found = new ArrayList<>();
    for (Match match : wordings.in(post, amounts)) {
      String id = match.saying().of();
      if (!taken.get(match.first())
          && found.stream().noneMatch(one -> one.adjustment().equals(id))
          && !isFromThePlan(match, post)
          && isDone(match, post)) {
        String outcome = OutcomeWords.of(match, post);
        if (outcome == null && isOnlyHowItWasMade(id, post)) {
          continue;
        }
        Optional<Amount> amount = this.amounts.nearest(match.first(), match.last(), post, amounts);
        TextSpan span = post.span(match.first(), match.last());
        found.add(
            new ChangeRead(
                id,
                this.amounts.of(id, amount, post),
                outcome,
                List.of(),
                List.of(),
                amount.map(one -> span.with(one.span())).orElse(span),
                match.confidence()));
      }
    }
    return found;
  }

  /** "I sewed it with a stretch stitch", "measured again, 77": no change if nothing came of it. */
  private boolean isOnlyHowItWasMade(String id, Post post) {
    AdjustmentEntry change = catalog.get(id);
    return change != null && post.lists().has("stages of making it", change.stage());
  }

  /** "Cut the elastic shorter than the pattern": how it was made, not changed. */
  private static boolean isFromThePlan(Match match, Post post) {
    int end = Math.min(post.sentenceOf(match.last()).last(), match.last() + FARTHEST_PLAN);
    boolean compared = false;
    for (int i = match.first(); i <= end; i++) {
      String word = post.words().get(i).plain();
      if (compared && post.lists().has("what was planned", word)) {
        return true;
      }
      compared |= post.lists().has("compared with", word);
    }
    return false;
  }

  /** Told in the past tense, and neither asked about nor denied nor put off. */
  private static boolean isDone(Match match, Post post) {
    int first = match.first();
    int last = match.last();
    int from = Math.max(Whereabouts.clauseStart(post, first), first - LONGEST_CLAUSE);
    boolean done = false;
    for (int i = from; i <= last; i++) {
      String word = post.words().get(i).plain();
      if (post.lists().has("to do", word) && i < first
          || post.words().get(i).plain().equals("to") && i == first - 1) {
        return isDoneAsTold(last, post);
      }
      if (post.lists().has("how a piece lies", word) && first - NEXT_TO <= i && i < last) {
        return false;
      }
      done |= isPast(post, i, from);
    }
    done |= isSubject(match, post) || isDoneAsTold(last, post);
    boolean denied =
        post.cues("no").around(match.first() - REACH_OF_NO, match.first() - 1).stream()
            .anyMatch(
                no ->
                    match.first() - no.last() <= REACH_OF_NO
                        && post.clause()[no.first()] == post.clause()[match.first()]);
    return done && !denied;
  }

  /** "You told me to go up a size, so I did". */
  private static boolean isDoneAsTold(int last, Post post) {
    int end = post.sentenceOf(last).last();
    Stretch after = new Stretch(last + 1, Math.min(end, last + FARTHEST_DONE));
    return post.says("done as told", after, 2);
  }

  /** "Letting out the straps changed nothing"; "pulling them up did nothing" is only a test. */
  private static boolean isSubject(Match match, Post post) {
    String word = post.words().get(match.first()).plain();
    return word.endsWith("ing")
        && !post.lists().has("done by hand", word)
        && post.cuesInClause(match.last()).stream()
            .anyMatch(
                cue -> OutcomeWords.isOutcome(cue.name()) && cue.first() <= match.last() + NEXT_TO);
  }

  private static boolean isPast(Post post, int i, int clause) {
    String word = post.words().get(i).plain();
    String before = i == 0 ? "" : post.words().get(i - 1).plain();
    if (post.lists().has("past or present", word)) {
      return i == clause && post.breaks().get(i).compareTo(Break.PAUSE) >= 0
          || post.lists().has("doers", before);
    }
    return post.lists().has("past tenses", word)
        || word.length() > 4 && word.endsWith("ed") && !word.endsWith("eed")
        || word.endsWith("ing") && post.lists().has("repeated", before);
  }
}
