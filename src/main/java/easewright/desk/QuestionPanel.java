package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.FittingService;
import easewright.answering.HandbookService;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.saying.SignNote;
import jakarta.inject.Singleton;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The form for a question and its answer, for use on several pages. */
@Singleton
class QuestionPanel {
  static final List<String> OWN_FAULTS =
      Stream.concat(Stream.of("/text", "/pattern", "/nickname"), ToileFields.names().stream())
          .toList();

  private final FittingDesk desk;
  private final FittingService fittings;
  private final PatternSheets sheets;
  private final HandbookService handbooks;

  QuestionPanel(
      FittingDesk desk, FittingService fittings, PatternSheets sheets, HandbookService handbooks) {
    this.desk = desk;
    this.fittings = fittings;
    this.sheets = sheets;
    this.handbooks = handbooks;
  }

  /**
   * The choices in the form.
   *
   * @param family the family whose signs these are; "" for the usual one
   * @param others names of further families with a drawing, by id
   * @param changes name of each change by its id
   * @param areas name of each area by its id
   */
  public record Choices(
      String family,
      Map<String, String> others,
      SignPlaces signs,
      List<PatternSheet> sheets,
      Map<String, String> changes,
      Map<String, String> areas) {
    /** Every sign once, in the order of the places. */
    public List<SignNote> allSigns() {
      return signs.places().stream().flatMap(place -> place.signs().stream()).distinct().toList();
    }

    /** The numbers of the rows of a list. */
    public List<Integer> rows() {
      return IntStream.range(0, ToileFields.ROWS).boxed().toList();
    }

    /** The name of a sign; its id if the rule book has no such sign. */
    public String nameOf(String sign) {
      return signs.places().stream()
          .flatMap(place -> place.signs().stream())
          .filter(one -> one.id().equals(sign))
          .map(one -> one.name())
          .findFirst()
          .orElse(sign);
    }
  }

  /** A form, its answer panel, and the HTTP status of a page that shows both. */
  record Outcome(FilledForm form, DeskAnswer shown, int status) {
    static Outcome blank(FilledForm form) {
      return new Outcome(form, DeskAnswer.unanswered(null), 200);
    }
  }

  /** Answers a form, or reports its faults. */
  Outcome outcome(FilledForm filled, UriInfo called) {
    FilledForm form = StruckReadings.taken(QuestionReplies.taken(filled));
    if (!Conversation.isStarted(form)) {
      return Outcome.blank(form);
    }
    try {
      return new Outcome(form, desk.answer(form, called.getBaseUri().toString()), 200);
    } catch (FaultyRequest refusal) {
      return refused(form, refusal);
    }
  }

  /** The same for a form already rejected. */
  Outcome refused(FilledForm form, FaultyRequest refusal) {
    return new Outcome(form.refused(refusal), desk.unanswered(form), refusal.status());
  }

  /** Answers a form; if its button requests it, empties the text area for the next message. */
  Outcome goingOn(FilledForm form, UriInfo called) {
    Outcome outcome = outcome(form, called);
    DeskAnswer answered = outcome.shown();
    if (!form.value("goOn").equals("yes") || !answered.isAnswered()) {
      return outcome;
    }
    String asked = answered.question() == null ? "" : answered.question().sign();
    return new Outcome(
        Conversation.goingOn(outcome.form(), answered.answer().soFar(), asked),
        answered,
        outcome.status());
  }

  /** The form as a request. */
  ObjectNode request(FilledForm form) {
    return desk.request(form);
  }

  /** The choices for the garment that was answered, else for the one the form is for. */
  Choices choices(Outcome outcome) {
    FilledForm form = outcome.form();
    DeskAnswer shown = outcome.shown();
    String chosen = form.value(Conversation.GARMENT).replaceFirst("/.*", "");
    String family =
        handbooks.other(
            shown.isAnswered()
                ? shown.answer().understood().family()
                : form.value(Conversation.FAMILY));
    String named = family.isEmpty() ? null : family;
    return new Choices(
        family,
        handbooks.others(),
        SignPlaces.of(
            handbooks.handbook().garment(named).orElse(null),
            named == null ? fittings.signs() : fittings.signs(named)),
        sheets.offeredWith(chosen),
        fittings.changes(),
        fittings.areas());
  }
}
