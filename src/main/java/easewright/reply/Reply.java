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
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToIntFunction;

/**
 * The content of a reply to a fitting, chosen once and the same in every format: the caution, the
 * most likely cause, the one change, its check, other possible causes, what to report next.
 *
 * @param readYourself passages of a post that only a person can judge; they come first
 * @param cautions safety cautions, most serious first, without mere reminders
 * @param notNow what is left out because of a caution, and why; null if nothing is
 * @param verdict how certain the diagnosis is
 * @param causes the possible causes, most probable first
 * @param change the change to make first, or null
 * @param heldBack why no change is advised now; null if one is
 * @param size the size to cut, or null
 * @param measureAgain measurements that are unlikely
 * @param question what to ask next, or null
 * @param missing what to report next if there is no question, or null
 * @param parts the optional parts included
 */
public record Reply(
    List<String> readYourself,
    List<CautionNote> cautions,
    String notNow,
    Verdict verdict,
    List<CauseNote> causes,
    AdjustmentNote change,
    HeldBackNote heldBack,
    SizeAdvice size,
    List<MeasureAgainNote> measureAgain,
    QuestionNote question,
    MissingNote missing,
    Set<ReplyPart> parts) {
  private static final int MOST_CAUSES = 3;
  private static final int MOST_UNJUDGED = 3;

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
        Verdict.of(answer),
        answer.causes(),
        first(answer.adjustments()),
        answer.adjustments().isEmpty() ? first(answer.heldBack()) : null,
        answer.size(),
        answer.measureAgain(),
        ask ? answer.questions().get(0) : null,
        !ask && answer.causes().isEmpty() ? first(answer.missing()) : null,
        EnumSet.allOf(ReplyPart.class));
  }

  /** Without a sign, a question would be a guess. */
  private static boolean asks(Answer answer) {
    return !answer.causes().isEmpty() || !answer.unexplained().isEmpty();
  }

  private static <T> T first(List<T> list) {
    return list.isEmpty() ? null : list.get(0);
  }

  /**
   * The fullest reply within a word limit. Adds back the most important optional parts first, then
   * any that still fit.
   *
   * @param words counts the words of a reply as written
   */
  public Reply within(int most, ToIntFunction<Reply> words) {
    if (words.applyAsInt(this) <= most) {
      return this;
    }
    Reply fullest = saying(EnumSet.noneOf(ReplyPart.class));
    List<ReplyPart> inTurn = Arrays.asList(ReplyPart.values());
    for (int i = inTurn.size() - 1; i >= 0; i--) {
      Set<ReplyPart> more = EnumSet.of(inTurn.get(i));
      more.addAll(fullest.parts);
      Reply fuller = saying(more);
      if (words.applyAsInt(fuller) <= most) {
        fullest = fuller;
      }
    }
    return fullest;
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
        verdict,
        causes,
        change,
        heldBack,
        size,
        measureAgain,
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
