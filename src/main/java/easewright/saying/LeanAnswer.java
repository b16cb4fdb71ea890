package easewright.saying;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CauseNote;
import easewright.diagnosis.Answer.PlaceNote;
import easewright.diagnosis.Answer.SizeAdvice;
import easewright.request.SoFar;
import java.util.List;
import java.util.stream.IntStream;

/**
 * An answer cut down to what a reply needs: the likeliest causes with the evidence that decides,
 * the first change whole and the others by name and amount, the first questions, and the size where
 * it is news. Written without the view {@link Answer.Full}, the rest of it is left out too.
 */
final class LeanAnswer {
  private static final int CAUSES_IF_CLEAR = 2;
  private static final int CAUSES_IF_OPEN = 3;
  private static final int EVIDENCE_OF_THE_FIRST = 2;
  private static final int EVIDENCE_OF_ANOTHER = 1;
  private static final int QUESTIONS = 2;

  private LeanAnswer() {}

  static Answer of(Answer answer) {
    return new Answer(
        answer.ruleBook(),
        answer.understood(),
        answer.cautions(),
        answer.notNow(),
        answer.afterwards() == null ? null : whole(answer.afterwards()),
        answer.asked(),
        size(answer),
        answer.cloth(),
        answer.findings(),
        causes(answer.causes(), answer.clear() ? CAUSES_IF_CLEAR : CAUSES_IF_OPEN),
        answer.clear(),
        answer.nothingWrong(),
        answer.noFault(),
        unlessEmpty(answer.tried()),
        adjustments(answer.adjustments()),
        answer.trial(),
        unlessEmpty(answer.heldBack()),
        first(QUESTIONS, answer.questions()),
        unlessEmpty(answer.unexplained()),
        unlessEmpty(answer.whyNot()),
        answer.missing(),
        unlessEmpty(answer.measureAgain()),
        answer.reply(),
        SoFar.lean(answer.soFar()),
        read(answer.read()));
  }

  /** Null where the size cut is the one recommended. */
  private static SizeAdvice size(Answer answer) {
    SizeAdvice size = answer.size();
    boolean asCut =
        size != null
            && size.recommended() != null
            && size.recommended().size().equals(answer.understood().sizeCut());
    return asCut ? null : size;
  }

  private static List<CauseNote> causes(List<CauseNote> all, int most) {
    return IntStream.range(0, Math.min(most, all.size()))
        .mapToObj(at -> cause(all.get(at), at == 0 ? EVIDENCE_OF_THE_FIRST : EVIDENCE_OF_ANOTHER))
        .toList();
  }

  private static CauseNote cause(CauseNote cause, int evidence) {
    return new CauseNote(
        cause.id(),
        cause.name(),
        cause.says(),
        cause.probability(),
        cause.priorDecibans(),
        cause.posteriorDecibans(),
        first(evidence, cause.evidenceFor()),
        first(EVIDENCE_OF_ANOTHER, cause.evidenceAgainst()),
        cause.rule());
  }

  private static List<AdjustmentNote> adjustments(List<AdjustmentNote> all) {
    int whole = 0;
    while (whole < all.size() && all.get(whole).places().isEmpty()) {
      whole++; // such as putting the last change back, which comes before a change
    }
    int last = whole;
    return IntStream.range(0, all.size())
        .mapToObj(at -> at == 0 || at == last ? whole(all.get(at)) : byName(all.get(at)))
        .toList();
  }

  /** Without the linings and support layers that follow their main piece. */
  private static AdjustmentNote whole(AdjustmentNote one) {
    List<PlaceNote> places = one.places().stream().filter(place -> !place.follows()).toList();
    return with(
        one, places, one.drawing(), one.measureFirst(), one.steps(), one.check(), one.declineIf());
  }

  private static AdjustmentNote byName(AdjustmentNote one) {
    return with(one, null, null, null, null, null, null);
  }

  private static AdjustmentNote with(
      AdjustmentNote one,
      List<PlaceNote> places,
      String drawing,
      String measureFirst,
      List<String> steps,
      String check,
      List<String> declineIf) {
    return new AdjustmentNote(
        one.id(),
        one.name(),
        one.use(),
        one.does(),
        one.worth(),
        one.stage(),
        one.tightens(),
        one.slackOnly(),
        one.amount(),
        measureFirst,
        places,
        drawing,
        steps,
        check,
        one.sideEffects(),
        one.effort(),
        one.undo(),
        declineIf,
        one.why(),
        one.whyBeforeNext(),
        one.cures(),
        one.rules());
  }

  /** Without the place in the text of each thing read, which {@code /v1/intakes} returns. */
  private static JsonNode read(JsonNode read) {
    return read instanceof ObjectNode all ? all.deepCopy().without("spans") : read;
  }

  private static <T> List<T> unlessEmpty(List<T> all) {
    return all.isEmpty() ? null : all;
  }

  private static <T> List<T> first(int most, List<T> all) {
    return all.size() <= most ? all : all.subList(0, most);
  }
}
