package easewright.intake;

import easewright.english.Stretch;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Told.TrialRead;
import java.util.List;

/**
 * Changes that the writer has undone: "shortened them by half an inch, no good, so back they went".
 * Only their outcome counts, as that of a trial; nothing is left to put back.
 */
final class UndoneChanges {
  /** As many words after a change may say that it was undone. */
  private static final int FARTHEST = 30;

  private static final int LONGEST = 4;

  private UndoneChanges() {}

  /** The changes that are still there. */
  static List<ChangeRead> kept(List<ChangeRead> changes, Post post) {
    return changes.stream().filter(one -> !isUndone(one, post)).toList();
  }

  /** The others, as trials. */
  static List<TrialRead> trials(List<ChangeRead> changes, Post post) {
    return changes.stream()
        .filter(one -> isUndone(one, post))
        .map(
            one ->
                new TrialRead(
                    one.adjustment(),
                    one.amount(),
                    "worn",
                    one.outcome(),
                    one.span(),
                    one.confidence()))
        .toList();
  }

  private static boolean isUndone(ChangeRead change, Post post) {
    int last = Whereabouts.wordAt(post, change.span().to() - 1);
    int next = post.sentenceOf(last).last() + 1;
    int end = next < post.words().size() ? post.sentenceOf(next).last() : next - 1;
    Stretch after = new Stretch(last + 1, Math.min(end, last + FARTHEST));
    return post.says("undone again", after, LONGEST);
  }
}
