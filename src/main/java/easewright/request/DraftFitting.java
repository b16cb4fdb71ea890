package easewright.request;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.request.IntakeAnswer.ConflictNote;
import easewright.request.IntakeAnswer.SpanNote;
import java.util.ArrayList;
import java.util.List;

/**
 * A fitting being built from the fields and the text of a request: the request so far, where in the
 * text each part was read, and where text and fields contradict each other.
 */
final class DraftFitting {
  private final String text;
  private final ObjectNode fields;
  private final List<SpanNote> spans = new ArrayList<>();
  private final List<ConflictNote> conflicts = new ArrayList<>();

  /**
   * Starts with the request's own fields.
   *
   * @param fields the request without its text; modified in place
   */
  DraftFitting(String text, ObjectNode fields) {
    this.text = text;
    this.fields = fields;
  }

  /** The request so far. */
  ObjectNode fields() {
    return fields;
  }

  /** Where in the text each part was read. */
  List<SpanNote> spans() {
    return List.copyOf(spans);
  }

  /** Where text and fields contradict each other. */
  List<ConflictNote> conflicts() {
    return List.copyOf(conflicts);
  }

  /** Records where a part of the request was read. */
  void readAt(String pointer, TextSpan span, double confidence, String because) {
    readAt(pointer, span, confidence, because, false);
  }

  /**
   * Records where a length was read.
   *
   * @param unitAssumed whether the text does not say its unit
   */
  void readAt(
      String pointer, TextSpan span, double confidence, String because, boolean unitAssumed) {
    spans.add(
        new SpanNote(
            pointer, span.in(text), span.from(), span.to(), confidence, because, unitAssumed));
  }

  /**
   * Records that the text contradicts a field.
   *
   * @param field what the field says; null if it cannot be put in words
   */
  void conflict(String pointer, String field, TextSpan span) {
    conflicts.add(new ConflictNote(pointer, field, span.in(text)));
  }

  static void putIfSaid(ObjectNode node, String field, String value) {
    if (value != null) {
      node.put(field, value);
    }
  }

  /** A plain length as text, any other as its ends and its places. */
  static void putIfSaid(ObjectNode node, String field, AmountRead amount) {
    if (amount == null || amount.isPlain()) {
      putIfSaid(node, field, amount == null ? null : amount.from());
      return;
    }
    ObjectNode written = node.putObject(field);
    written.put(amount.to() == null ? "value" : "from", amount.from());
    putIfSaid(written, "to", amount.to());
    if (amount.places() > 1) {
      written.put("places", amount.places());
    }
  }
}
