package easewright.request;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.regex.Pattern;

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
 * @param questions what the writer asks, in the order asked
 */
public record IntakeAnswer(
    String kind,
    JsonNode fitting,
    List<SpanNote> spans,
    List<NotUnderstoodNote> notUnderstood,
    List<ReadYourselfNote> readYourself,
    List<ConflictNote> conflicts,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<AskedNote> questions) {

  static final String FIT_QUESTION = "fit-question";
  static final String OTHER = "not-a-fit-question";

  private static final String OUTSIDE = "outside";

  private static final Pattern END_OF_SENTENCE = Pattern.compile("[.!?\\n]");

  /**
   * Whether the answer may ask back where the text tells too little to go on: it says what is seen
   * but not where, or asks what to do about the fit.
   */
  public boolean mayBeAskedBack() {
    return notUnderstood.stream().anyMatch(one -> one.where() != null)
        || fitting.path("asksWhatToDo").asBoolean();
  }

  /** Whether nothing was read of it, and nothing is left for a person to read. */
  boolean isEmpty() {
    return spans.isEmpty() && readYourself.isEmpty();
  }

  /** Whether it tells nothing of a garment, though perhaps something of its wearer. */
  boolean tellsOfNoGarment() {
    return readYourself.isEmpty()
        && spans.stream().allMatch(one -> one.pointer().startsWith("/circumstances/"));
  }

  /** Whether nothing was read of it but questions that no fitting answers. */
  boolean asksSomethingElse() {
    return isEmpty()
        && !questions.isEmpty()
        && questions.stream().anyMatch(one -> one.kind().equals(OUTSIDE))
        && notUnderstood.stream().noneMatch(one -> one.where() != null);
  }

  /**
   * Whether something stated of the garment was not understood; what is only asked does not count.
   *
   * @param text the text that was read
   */
  public boolean leavesAStatementOf(String text) {
    return notUnderstood.stream()
        .map(one -> END_OF_SENTENCE.matcher(text).region(one.to(), text.length()))
        .anyMatch(end -> !end.find() || !end.group().equals("?"));
  }

  /**
   * As included in an answer to a fitting: everything except the fitting, from which the answer
   * continues.
   */
  public JsonNode asJson() {
    return new ObjectMapper()
        .setSerializationInclusion(JsonInclude.Include.NON_NULL)
        .valueToTree(
            new IntakeAnswer(kind, null, spans, notUnderstood, readYourself, conflicts, questions));
  }

  /**
   * Where an item was read.
   *
   * @param pointer RFC 6901 pointer into {@code fitting}
   * @param from index of the first character (UTF-16)
   * @param to index after the last
   * @param confidence from 0 to 1; not a probability, but a larger one is surer
   * @param because the rule book's phrase it was recognised by, the sign's name if only a model
   *     read it, or null
   * @param unitAssumed true if no unit was written and it was inferred from the size of the number
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
   * @param where a question about the place, if it says what is seen but not where; otherwise null
   */
  public record NotUnderstoodNote(
      String text, int from, int to, List<PerhapsNote> perhaps, String where) {}

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

  /**
   * What the writer asks.
   *
   * @param kind "normal", "too", "need", "cause", "do", "must", "again", "amount", "place", "wear",
   *     "size", "thing", "mad", "save" or "other"
   * @param about what it is about, such as "larger" or "cloth", or null
   * @param from index of the first character (UTF-16)
   * @param to index after the last
   */
  public record AskedNote(String kind, String about, String text, int from, int to) {}

  /** A field that was sent, and what the text says instead; {@code text} is what was not used. */
  public record ConflictNote(String pointer, String field, String text) {}
}
