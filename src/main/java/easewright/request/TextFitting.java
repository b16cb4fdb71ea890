package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.TextRead;
import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import easewright.number.TextSpan;
import easewright.request.IntakeAnswer.NotUnderstoodNote;
import easewright.request.IntakeAnswer.PerhapsNote;
import easewright.request.IntakeAnswer.ReadYourselfNote;
import easewright.request.IntakeAnswer.SpanNote;
import easewright.rulebook.Catalog;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Merges what a text says into the request it was sent with. The request's own fields take
 * precedence; a contradicting text is reported as a conflict. But a danger or a circumstance
 * applies if either reports it, since a checkbox left at its default must not hide it.
 */
public final class TextFitting {
  /** A name stands there letter for letter. */
  private static final double NAMED = 1;

  private final String text;
  private final DraftFitting draft;
  private final Set<String> sizes;
  private final Catalog catalog;
  private final Wording wording;
  private final double sameMm;
  private final List<Struck> struck;

  private TextFitting(String text, ObjectNode fitting, Set<String> sizes, RuleBookSource book) {
    this.sameMm = book.parameter("same-length");
    this.struck = Struck.in(fitting);
    this.text = text;
    this.draft = new DraftFitting(text, fitting);
    this.sizes = sizes;
    this.catalog = book.catalog();
    this.wording = book.wording();
  }

  /**
   * Merges.
   *
   * @param request the request without its text; changed in place
   * @param named what the text calls by its name, such as a pattern sheet, by its place in the
   *     request, which holds it already
   * @param sizes the pattern's sizes, empty if no pattern is known
   */
  static IntakeAnswer merge(
      String text,
      Reading reading,
      ObjectNode request,
      Map<String, TextSpan> named,
      Set<String> sizes,
      RuleBookSource book) {
    TextFitting merge = new TextFitting(text, request, sizes, book);
    named.forEach((place, span) -> merge.draft.readAt(place, span, NAMED, null));
    TextSigns signs = new TextSigns(merge.draft, book);
    TextCircumstances circumstances = new TextCircumstances(merge.draft);
    reading.lengths().stream()
        .filter(one -> merge.counts(one.name(), one.span()))
        .forEach(merge::length);
    TextToile toile = new TextToile(merge.draft);
    toile.put(
        reading.told().withTrials(one -> merge.counts(one.adjustment(), one.span())),
        request.has("pattern"));
    reading.cloths().forEach(merge::cloth);
    if (reading.sizeCut() != null && merge.counts("sizeCut", reading.sizeCut().span())) {
      merge.sizeCut(reading.sizeCut());
    }
    toile.system(reading.told().sizeSystem());
    reading.signs().stream()
        .filter(one -> merge.isDanger(one.id()) || merge.counts(one.id(), one.span()))
        .forEach(signs::put);
    reading.times().forEach(signs::time);
    reading.fine().forEach(one -> merge.named("fine", one));
    reading.couldNotTell().forEach(one -> merge.named("couldNotTell", one));
    reading.earlier().stream()
        .filter(one -> merge.counts(one.adjustment(), one.span()))
        .forEach(toile::change);
    reading.told().asksAbout().forEach(one -> merge.named("asksAbout", one));
    if (reading.told().asksWhatToDo() && !request.has("asksWhatToDo")) {
      request.put("asksWhatToDo", true);
    }
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
        merge.draft.conflicts(),
        reading.told().questions().stream()
            .map(
                one ->
                    new IntakeAnswer.AskedNote(
                        one.kind(),
                        one.about(),
                        one.span().in(text),
                        one.span().from(),
                        one.span().to()))
            .toList());
  }

  private NotUnderstoodNote notUnderstood(Reading.NotUnderstood one, Catalog catalog) {
    return new NotUnderstoodNote(
        one.span().in(text),
        one.span().from(),
        one.span().to(),
        one.perhaps().stream().map(sign -> new PerhapsNote(sign, catalog.nameOf(sign))).toList(),
        one.unplaced() ? where(one, catalog) : null);
  }

  private String where(Reading.NotUnderstood one, Catalog catalog) {
    return wording.say(
        "where-is-it",
        "words",
        one.span().in(text),
        "signs",
        one.perhaps().stream().map(catalog::nameOf).collect(Collectors.joining("; ")));
  }

  private void length(LengthRead read) {
    String pointer = "/" + read.of() + "/" + read.name();
    JsonNode sent = draft.fields().at(pointer);
    if (!sent.isMissingNode()) {
      if (sent.isTextual() && !isSame(sent.textValue(), read.text())) {
        draft.conflict(pointer, sent.textValue(), read.span());
      }
      return;
    }
    if (read.of().startsWith("design") && draft.fields().has("pattern")) {
      return; // a sheet says it
    }
    ObjectNode lengths = draft.fields().withObject("/" + read.of());
    if (read.held().isEmpty()) {
      lengths.put(read.name(), read.text());
    } else {
      read.held().forEach(lengths.putObject(read.name()).put("value", read.text())::put);
    }
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

  private boolean counts(String id, TextSpan span) {
    return struck.stream().noneMatch(one -> one.strikes(id, span));
  }

  private boolean isDanger(String sign) {
    return catalog.signs().get(sign).redFlag();
  }

  private void named(String list, TextRead read) {
    if (!counts(read.value(), read.span())) {
      return;
    }
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
