package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.TextRead;
import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import easewright.request.IntakeAnswer.NotUnderstoodNote;
import easewright.request.IntakeAnswer.PerhapsNote;
import easewright.request.IntakeAnswer.ReadYourselfNote;
import easewright.request.IntakeAnswer.SpanNote;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBookSource;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Merges what a text says into the request it was sent with. The request's own fields take
 * precedence; a contradicting text is reported as a conflict. But a danger or a circumstance
 * applies if either reports it, since a checkbox left at its default must not hide it.
 */
public final class TextFitting {
  private final String text;
  private final DraftFitting draft;
  private final Set<String> sizes;
  private final Catalog catalog;
  private final double sameMm;

  private TextFitting(String text, ObjectNode fitting, Set<String> sizes, RuleBookSource book) {
    this.sameMm = book.parameter("same-length");
    this.text = text;
    this.draft = new DraftFitting(text, fitting);
    this.sizes = sizes;
    this.catalog = book.catalog();
  }

  /**
   * Merges.
   *
   * @param request the request without its text; changed in place
   * @param sizes the pattern's sizes, empty if no pattern is known
   */
  static IntakeAnswer merge(
      String text, Reading reading, ObjectNode request, Set<String> sizes, RuleBookSource book) {
    TextFitting merge = new TextFitting(text, request, sizes, book);
    TextSigns signs = new TextSigns(merge.draft, merge.catalog);
    TextCircumstances circumstances = new TextCircumstances(merge.draft);
    reading.lengths().forEach(merge::length);
    reading.cloths().forEach(merge::cloth);
    if (reading.sizeCut() != null) {
      merge.sizeCut(reading.sizeCut());
    }
    reading.signs().forEach(signs::put);
    reading.couldNotTell().forEach(one -> merge.named("couldNotTell", one));
    reading.earlier().forEach(merge::change);
    reading.circumstances().forEach(circumstances::put);
    if (reading.monthsSinceOperation() != null) {
      circumstances.putMonths(reading.monthsSinceOperation());
    }
    reading.suspected().forEach(one -> merge.named("whyNot", one));
    return new IntakeAnswer(
        reading.fitQuestion() ? IntakeAnswer.FIT_QUESTION : IntakeAnswer.OTHER,
        request,
        merge.draft.spans(),
        reading.notUnderstood().stream()
            .map(one -> merge.notUnderstood(one, merge.catalog))
            .toList(),
        reading.readYourself().stream()
            .map(
                one ->
                    new ReadYourselfNote(
                        one.span().in(text), one.span().from(), one.span().to(), one.why()))
            .toList(),
        merge.draft.conflicts());
  }

  private NotUnderstoodNote notUnderstood(Reading.NotUnderstood one, Catalog catalog) {
    return new NotUnderstoodNote(
        one.span().in(text),
        one.span().from(),
        one.span().to(),
        one.perhaps().stream().map(sign -> new PerhapsNote(sign, catalog.nameOf(sign))).toList());
  }

  private void length(LengthRead read) {
    JsonNode sent = draft.fields().path(read.of()).path(read.name());
    String pointer = "/" + read.of() + "/" + read.name();
    if (!sent.isMissingNode()) {
      if (sent.isTextual() && !isSame(sent.textValue(), read.text())) {
        draft.conflict(pointer, sent.textValue(), read.span());
      }
      return;
    }
    draft.fields().withObject("/" + read.of()).put(read.name(), read.text());
    draft.readAt(pointer, read.span(), read.confidence(), null, read.unitAssumed());
  }

  private boolean isSame(String one, String other) {
    try {
      return Math.abs(Quantity.parse(one).length().mm() - Quantity.parse(other).length().mm())
          < sameMm;
    } catch (BadQuantity | IllegalArgumentException notLengths) {
      return true; // the reader of the request reports the fault
    }
  }

  private void cloth(ClothRead read) {
    String pointer = "/cloth/" + read.role() + "/" + read.direction();
    if (!draft.fields().at(pointer).isMissingNode()) {
      return;
    }
    // A test along the cloth counts only together with one around.
    if (read.direction().equals("along")
        && draft.fields().at("/cloth/" + read.role() + "/around").isMissingNode()) {
      return;
    }
    ObjectNode test = draft.fields().withObject(pointer);
    read.lengths().forEach(test::put);
    draft.readAt(pointer, read.span(), read.confidence(), null);
  }

  private void sizeCut(TextRead read) {
    JsonNode sent = draft.fields().path("sizeCut");
    String size = sizes.isEmpty() ? read.value() : asOnTheSheet(read.value());
    if (!sent.isMissingNode() || size == null) {
      String field = sent.isTextual() ? sent.textValue() : null;
      if (size == null || field != null && !plain(field).equals(plain(size))) {
        draft.conflict("/sizeCut", field, read.span());
      }
      return;
    }
    draft.fields().put("sizeCut", size);
    draft.readAt("/sizeCut", read.span(), read.confidence(), null);
  }

  private String asOnTheSheet(String written) {
    return sizes.stream()
        .filter(size -> plain(size).equals(plain(written)))
        .findFirst()
        .orElse(null);
  }

  private static String plain(String size) {
    return size.replace(" ", "").toUpperCase(Locale.ROOT);
  }

  private void change(ChangeRead read) {
    for (JsonNode sent : draft.fields().path("earlier")) {
      if (read.adjustment().equals(sent.path("adjustment").textValue())) {
        return;
      }
    }
    ArrayNode earlier = draft.fields().withArray("earlier");
    if (earlier.size() >= FittingReader.MOST_EARLIER) {
      return;
    }
    ObjectNode change = earlier.addObject().put("adjustment", read.adjustment());
    DraftFitting.putIfSaid(change, "amount", read.amount());
    DraftFitting.putIfSaid(change, "outcome", read.outcome());
    draft.readAt("/earlier/" + (earlier.size() - 1), read.span(), read.confidence(), null);
  }

  private void named(String list, TextRead read) {
    ArrayNode names = draft.fields().withArray(list);
    for (JsonNode name : names) {
      if (Objects.equals(name.textValue(), read.value())) {
        return;
      }
    }
    if (names.size() < FittingReader.MOST_WHY_NOT) {
      names.add(read.value());
      draft.readAt("/" + list + "/" + (names.size() - 1), read.span(), read.confidence(), null);
    }
  }

  /** Pointers to what only the text said, to attribute faults to the text. */
  public static Set<String> saidByText(IntakeAnswer read) {
    return read.spans().stream().map(SpanNote::pointer).collect(Collectors.toUnmodifiableSet());
  }
}
