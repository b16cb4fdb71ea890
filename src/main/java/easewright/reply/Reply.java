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
 * What is said in reply to a fitting, chosen once and written in every form alike: the caution, the
 * likeliest cause, the one change, its check, what else it might be, what to tell next.
 *
 * @param readYourself words of a post that only a person can judge; before all else
 * @param cautions what may hurt, gravest first, those to keep in mind left out
 * @param notNow what is left out because of a caution, and why; null where nothing is
 * @param verdict how far it is known what is wrong
 * @param causes the causes in play, most probable first
 * @param change the change to make first, or null
 * @param heldBack why nothing is changed now; null if something is
 * @param size the size to cut, or null
 * @param measureAgain measurements that are unlikely
 * @param question what to ask next, or null
 * @param missing what to give next where nothing is to be asked, or null
 * @param parts what there is room for
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

  /** Everything there is to say. */
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

  /** With no sign to go by, a question would be a shot in the dark. */
  private static boolean asks(Answer answer) {
    return !answer.causes().isEmpty() || !answer.unexplained().isEmpty();
  }

  private static <T> T first(List<T> list) {
    return list.isEmpty() ? null : list.get(0);
  }

  /**
   * The fullest reply of at most so many words. What is left out last is given room first, and what
   * then still fits in beside it.
   *
   * @param words how many words a reply has as it is written
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

  /** The same reply with a part left out, where it is said elsewhere. */
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

  /** Whether there is room for a part, by its name. */
  public boolean says(String part) {
    return parts.contains(ReplyPart.valueOf(part));
  }

  /** Whether one cause is likely enough to change something for. */
  public boolean clear() {
    return verdict == Verdict.CLEAR;
  }

  /** What is left out because of a caution; null where nothing is, or where there is no room. */
  @Override
  public String notNow() {
    return stop() || says("NOT_NOW") ? notNow : null;
  }

  /** Whether a danger comes before the fit. */
  public boolean stop() {
    return verdict == Verdict.DANGER;
  }

  /** The cautions after the gravest. */
  public List<CautionNote> furtherCautions() {
    return cautions.subList(Math.min(1, cautions.size()), cautions.size());
  }

  /** The causes it may be while that is open. */
  public List<CauseNote> inPlay() {
    return causes.subList(0, Math.min(says("MORE_CAUSES") ? MOST_CAUSES : 2, causes.size()));
  }

  /** What else it might be where one cause is clear. */
  public List<CauseNote> others() {
    int most = says("MORE_CAUSES") ? MOST_CAUSES : 1;
    return clear() && says("OTHER_CAUSES")
        ? causes.subList(1, Math.min(1 + most, causes.size()))
        : List.of();
  }

  /** Where the change is made; null where it is made on no pattern. */
  public PlaceNote place() {
    return change == null ? null : first(change.places());
  }

  /** Names of the pieces at the place of the change, linings that repeat them aside. */
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
