package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.TriedAsGiven;
import easewright.rulebook.RuleBookSource;
import java.util.List;

/** What is said where something hangs loose and stays so because of a caution. */
record RoomLeft(Answer answer, RuleBookSource book, SpokenPhrases phrases) {

  /** Whether that is so. */
  boolean isLeft() {
    boolean loose =
        answer.understood().signs().stream()
            .anyMatch(one -> one.present() && book.catalog().signs().get(one.id()).slack());
    // Where a cause is clear and nothing is held back by name, what would cure it may not be named.
    boolean unnamed = Verdict.of(answer) == Verdict.CLEAR && answer.heldBack().isEmpty();
    return answer.nothingTighter() && (loose || unnamed);
  }

  /**
   * @param before what was said before it
   */
  void say(List<String> before, Pieces pieces) {
    if (isTriedRight()) {
      pieces.fits(phrases.say("tried-right-later"));
    }
    String measured = AmountTold.first(answer);
    boolean told = measured != null && before.stream().anyMatch(one -> one.contains(measured));
    pieces.fits(
        measured == null || told
            ? phrases.say("roomy")
            : phrases.say("roomy-number", "amount", measured));
  }

  /** Whether she tried something by hand, and it was right. */
  private boolean isTriedRight() {
    List<TriedAsGiven> tried = answer.understood().tried();
    return tried != null
        && tried.stream().anyMatch(one -> one.how() != null && "right".equals(one.outcome()));
  }
}
