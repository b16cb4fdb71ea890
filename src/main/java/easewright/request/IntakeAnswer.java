package easewright.request;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;

/**
 * The result of reading a text.
 *
 * @param kind "fit-question" or "not-a-fit-question"
 * @param fitting the resulting request for {@code /v1/fittings}, including fields sent with the
 *     text
 * @param spans where in the text each item was read, in the order of the fitting
 * @param notUnderstood passages about the garment that were not understood
 * @param readYourself passages that may report a danger to health and that only a person can judge
 * @param conflicts contradictions between the text and the fields sent with it; the fields count,
 *     but a danger or a circumstance applies if either reports it
 */
public record IntakeAnswer(
    String kind,
    JsonNode fitting,
    List<SpanNote> spans,
    List<NotUnderstoodNote> notUnderstood,
    List<ReadYourselfNote> readYourself,
    List<ConflictNote> conflicts) {

  static final String FIT_QUESTION = "fit-question";
  static final String OTHER = "not-a-fit-question";

  /**
   * As included in an answer to a fitting: everything except the fitting, from which the answer
   * continues.
   */
  public JsonNode asJson() {
    return new ObjectMapper()
        .setSerializationInclusion(JsonInclude.Include.NON_NULL)
        .valueToTree(new IntakeAnswer(kind, null, spans, notUnderstood, readYourself, conflicts));
  }

  /**
   * Where an item was read.
   *
   * @param pointer RFC 6901 pointer into {@code fitting}
   * @param from index of the first character (UTF-16)
   * @param to index after the last
   * @param confidence from 0 to 1; not a probability, but a larger one is surer
   * @param because the rule book's phrase it was known by, the sign's name where only the trained
   *     reader read it, or null
   * @param unitAssumed true where no unit was written and the size of the number told it
   */
  public record SpanNote(
      String pointer,
      String text,
      int from,
      int to,
      double confidence,
      String because,
      boolean unitAssumed) {}

  /**
   * A passage that was not understood.
   *
   * @param perhaps signs with the most similar phrases, most likely first: to ask about, not to
   *     count
   */
  public record NotUnderstoodNote(String text, int from, int to, List<PerhapsNote> perhaps) {}

  /**
   * A passage that only a person can judge.
   *
   * @param start index of the first character (UTF-16)
   * @param end index after the last
   * @param why what its words refer to
   */
  public record ReadYourselfNote(String text, int start, int end, String why) {}

  /** A sign that may be meant. */
  public record PerhapsNote(String sign, String name) {}

  /** A field that was sent, and what the text says instead; {@code text} is what was not used. */
  public record ConflictNote(String pointer, String field, String text) {}
}
