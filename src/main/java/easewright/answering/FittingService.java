package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.request.FaultyRequest;
import easewright.request.IntakeAnswer;
import easewright.request.Standing;
import easewright.request.TextWithoutAnswer;
import easewright.rulebook.Family;
import easewright.saying.Detail;
import easewright.saying.SignNote;
import jakarta.inject.Singleton;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Answers fittings by the active rule book. Requests are JSON in the contract's form; a request may
 * contain a post in plain words. Nothing is stored.
 */
@Singleton
public class FittingService {
  private final RuleBookService rules;

  FittingService(RuleBookService rules) {
    this.rules = rules;
  }

  /**
   * Answers one fitting within the time limit.
   *
   * @throws FaultyRequest naming every fault of the request
   * @throws easewright.deadline.DeadlinePassed if it takes longer
   */
  public Answer answer(JsonNode request) {
    return answer(request, Standing.NONE);
  }

  /** The same with no more than this detail of its JSON needs. */
  public Answer answer(JsonNode request, Detail detail) {
    Edition edition = rules.edition();
    return rules.inTime(() -> edition.answer(request, Standing.NONE, detail));
  }

  /** What to say to a text that gets no answer, paragraph by paragraph. */
  public List<String> aside(TextWithoutAnswer text, JsonNode request) {
    return rules.edition().aside(text, request);
  }

  /** Answers the next round of a case, in which dangers of earlier rounds still count. */
  Answer answer(JsonNode request, Standing standing) {
    Edition edition = rules.edition();
    return rules.inTime(() -> edition.answer(request, standing, Detail.FULL));
  }

  /** Answers one fitting without a time limit, for batches, where nobody waits. */
  public Answer answerWithoutDeadline(JsonNode request) {
    return rules.edition().answer(request);
  }

  /**
   * Reads one fitting without answering it.
   *
   * @return the fitting as parsed, in request form
   * @throws FaultyRequest naming every fault of the request
   */
  public ObjectNode check(JsonNode request) {
    Edition edition = rules.edition();
    return rules.inTime(() -> edition.check(request));
  }

  /**
   * Reads the text of a request without answering it.
   *
   * @throws FaultyRequest if there is no text or it is too long
   */
  public IntakeAnswer read(JsonNode request) {
    Edition edition = rules.edition();
    return rules.inTime(() -> edition.read(request));
  }

  /** Reads a post in plain words without answering it. */
  public IntakeAnswer readText(String text) {
    return read(JsonNodeFactory.instance.objectNode().put("text", text));
  }

  /** The changes that can be reported as made or tried: name by id. */
  public Map<String, String> changes() {
    Map<String, String> names = new LinkedHashMap<>();
    rules
        .edition()
        .book()
        .catalog()
        .adjustments()
        .forEach((id, entry) -> names.put(id, entry.name()));
    return names;
  }

  /** The areas that can be reported as fine: name by id. */
  public Map<String, String> areas() {
    Map<String, String> names = new LinkedHashMap<>();
    rules
        .edition()
        .book()
        .catalog()
        .practice()
        .areas()
        .forEach(area -> names.put(area.id(), area.name()));
    return names;
  }

  /**
   * The family that links to drawings for an answer name: "" where they need not, and null where
   * such a garment is not drawn.
   */
  public String drawnAs(Answer answer) {
    Family family = rules.edition().book().whole().families().get(answer.understood().family());
    return family.drawings() == null ? null : family.usual() ? "" : family.id();
  }

  /** The signs that a fitting of any family can report. */
  public List<SignNote> everySign() {
    return rules.edition().book().whole().catalog().signs().values().stream()
        .map(SignNote::of)
        .toList();
  }

  /** The signs that a fitting of the usual family can report. */
  public List<SignNote> signs() {
    return signs(rules.edition().families().usual());
  }

  /**
   * The signs that a fitting of a family can report.
   *
   * @param family its id, or what such garments are called
   * @throws FaultyRequest with status 422 if there is no such family
   */
  public List<SignNote> signs(String family) {
    Edition edition = rules.edition();
    return edition
        .book()
        .families()
        .get(edition.families().known(family))
        .catalog()
        .signs()
        .values()
        .stream()
        .map(SignNote::of)
        .toList();
  }
}
