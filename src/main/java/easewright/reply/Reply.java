package easewright.reply;

import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.diagnosis.Answer.HeldBackNote;
import easewright.diagnosis.Answer.MeasureAgainNote;
import easewright.diagnosis.Answer.MissingNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.diagnosis.Answer.SizeAdvice;
import easewright.diagnosis.Answer.TrialNote;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The content of a reply to a fitting, chosen once and the same in every format: the caution, what
 * the wearer asked, the most likely cause, the one change, its check, other possible causes, what
 * to report next.
 *
 * @param readYourself passages of a post that only a person can judge; they come first
 * @param cautions safety cautions, most serious first, without mere reminders
 * @param notNow what is left out because of a caution, and why; null if nothing is
 * @param asked what the wearer asked whether to do, each answered in a sentence
 * @param verdict how certain the diagnosis is
 * @param noFault that nothing reported is a fault, in a sentence; null where something may be one
 * @param causes the possible causes, most probable first
 * @param tried what earlier changes that did not help did, each in a sentence
 * @param change the change to make first, or null
 * @param instead other ways to treat the cause that the change treats
 * @param later changes that treat other causes, on later toiles
 * @param trial what to try while no change is advised, or null
 * @param heldBack why no change is advised now; null if one is
 * @param size the size to cut, or null
 * @param measureAgain measurements that are unlikely
 * @param where questions for the place of what was said without one; they come before the others
 * @param question what to ask next, or null
 * @param missing what to report next if there is no question, or null
 * @param parts the optional parts included
 */
public record Reply(
    List<String> readYourself,
    List<CautionNote> cautions,
    String notNow,
    List<String> asked,
    Verdict verdict,
    String noFault,
    List<CauseNote> causes,
    List<String> tried,
    AdjustmentNote change,
    List<AdjustmentNote> instead,
    List<AdjustmentNote> later,
    TrialNote trial,
    HeldBackNote heldBack,
    SizeAdvice size,
    List<MeasureAgainNote> measureAgain,
    List<String> where,
    QuestionNote question,
    MissingNote missing,
    Set<ReplyPart> parts) {
  private static final int MOST_CAUSES = 3;
  private static final int MOST_UNJUDGED = 3;
  private static final int MOST_ASKED = 2;

  public Reply {
    parts = Set.copyOf(parts);
  }

  /** The full reply. */
  public static Reply of(Answer answer) {
    List<CautionNote> cautions =
        answer.cautions().stream().filter(caution -> !caution.urgency().equals("note")).toList();
    boolean ask = !answer.questions().isEmpty() && asks(answer);
    return new Reply(
        answer.readYourself().stream().limit(MOST_UNJUDGED).toList(),
        cautions,
        answer.notNow(),
        answer.asked().stream().limit(MOST_ASKED).map(Answer.AskedNote::says).toList(),
        Verdict.of(answer),
        answer.noFault(),
        answer.causes(),
        answer.tried().stream().map(Answer.FailedNote::says).toList(),
        first(answer.adjustments()),
        answer.instead(),
        answer.later(),
        answer.trial(),
        answer.adjustments().isEmpty() ? first(answer.heldBack()) : null,
        answer.size(),
        answer.measureAgain(),
        answer.where(),
        ask ? answer.questions().get(0) : null,
        !ask && answer.causes().isEmpty() && answer.noFault() == null && answer.where().isEmpty()
            ? first(answer.missing())
            : null,
        EnumSet.allOf(ReplyPart.class));
  }

  /** Without a sign, a question would be a guess. */
  private static boolean asks(Answer answer) {
    return !answer.causes().isEmpty() || answer.verdict().equals("untold");
  }

  private static <T> T first(List<T> list) {
    return list.isEmpty() ? null : list.get(0);
  }

  /** The same reply without a part that is stated elsewhere. */
  public Reply without(ReplyPart part) {
    EnumSet<ReplyPart> rest = EnumSet.allOf(ReplyPart.class);
    rest.retainAll(parts);
    rest.remove(part);
    return saying(rest);
  }

  private Reply saying(Set<ReplyPart> these) {
    return new Reply(
        readYourself,
        cautions,
        notNow,
        asked,
        verdict,
        noFault,
        causes,
        tried,
        change,
        instead,
        later,
        trial,
        heldBack,
        size,
        measureAgain,
        where,
        question,
        missing,
        these);
  }

  /** Whether the reply includes a part, by its name. */
  public boolean says(String part) {
    return parts.contains(ReplyPart.valueOf(part));
  }

  /** Whether one cause is likely enough to justify a change. */
  public boolean clear() {
    return verdict == Verdict.CLEAR;
  }

  /** What is left out because of a caution; null if nothing is, or if the part is omitted. */
  @Override
  public String notNow() {
    return stop() || says("NOT_NOW") ? notNow : null;
  }

  /** Whether a danger takes precedence over the fit. */
  public boolean stop() {
    return verdict == Verdict.DANGER;
  }

  /** The cautions after the most serious one. */
  public List<CautionNote> furtherCautions() {
    return cautions.subList(Math.min(1, cautions.size()), cautions.size());
  }

  /** The possible causes while the diagnosis is open. */
  public List<CauseNote> inPlay() {
    return causes.subList(0, Math.min(says("MORE_CAUSES") ? MOST_CAUSES : 2, causes.size()));
  }

  /** The other possible causes if one is clear. */
  public List<CauseNote> others() {
    int most = says("MORE_CAUSES") ? MOST_CAUSES : 1;
    return clear() && says("OTHER_CAUSES")
        ? causes.subList(1, Math.min(1 + most, causes.size()))
        : List.of();
  }

  /** Where the change is made; null if it is not made on a pattern. */
  public PlaceNote place() {
    return change == null ? null : first(change.places());
  }

  /** Names of the pieces at the place of the change, without linings that repeat them. */
  public List<String> pieces() {
    PlaceNote place = place();
    return place == null
        ? List.of()
        : change.places().stream()
            .filter(one -> one.line().equals(place.line()) && !one.follows())
            .map(PlaceNote::piece)
            .filter(piece -> piece != null)
            .toList();
  }

  /** Link to the garment's drawing with the place of the change marked, or null. */
  public String drawing() {
    return place() == null ? null : change.drawing();
  }
}
