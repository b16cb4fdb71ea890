package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Reading;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.intake.Reading.SignRead;
import easewright.intake.Reading.TextRead;
import easewright.intake.Span;
import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import easewright.request.IntakeAnswer.ConflictNote;
import easewright.request.IntakeAnswer.NotUnderstoodNote;
import easewright.request.IntakeAnswer.PerhapsNote;
import easewright.request.IntakeAnswer.ReadYourselfNote;
import easewright.request.IntakeAnswer.SpanNote;
import easewright.rulebook.Catalog;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Puts what a text says into the request it was sent with. What the request says itself stays; a
 * text that says otherwise is reported as a conflict, not followed; but where one of them tells of
 * a danger or a circumstance, it stands, since a box left as it was must not hide it.
 */
public final class TextFitting {
  /** Closer than this two lengths are the same measuring told twice. */
  private static final double SAME_MM = 3;

  private static final String MONTHS = "monthsSinceOperation";

  private final String text;
  private final ObjectNode fitting;
  private final Set<String> sizes;
  private final Catalog catalog;
  private final List<SpanNote> spans = new ArrayList<>();
  private final List<ConflictNote> conflicts = new ArrayList<>();

  private TextFitting(String text, ObjectNode fitting, Set<String> sizes, Catalog catalog) {
    this.text = text;
    this.fitting = fitting;
    this.sizes = sizes;
    this.catalog = catalog;
  }

  /**
   * Merges.
   *
   * @param request the request without its text; changed in place
   * @param sizes the pattern's sizes, empty when no pattern is known
   */
  static IntakeAnswer merge(
      String text, Reading reading, ObjectNode request, Set<String> sizes, Catalog catalog) {
    TextFitting merge = new TextFitting(text, request, sizes, catalog);
    reading.lengths().forEach(merge::length);
    reading.cloths().forEach(merge::cloth);
    if (reading.sizeCut() != null) {
      merge.sizeCut(reading.sizeCut());
    }
    reading.signs().forEach(merge::sign);
    reading.couldNotTell().forEach(one -> merge.named("couldNotTell", one));
    reading.earlier().forEach(merge::change);
    reading.circumstances().forEach(merge::circumstance);
    if (reading.monthsSinceOperation() != null) {
      merge.months(reading.monthsSinceOperation());
    }
    reading.suspected().forEach(one -> merge.named("whyNot", one));
    return new IntakeAnswer(
        reading.fitQuestion() ? IntakeAnswer.FIT_QUESTION : IntakeAnswer.OTHER,
        request,
        List.copyOf(merge.spans),
        reading.notUnderstood().stream().map(one -> merge.notUnderstood(one, catalog)).toList(),
        reading.readYourself().stream()
            .map(
                one ->
                    new ReadYourselfNote(
                        one.span().in(text), one.span().from(), one.span().to(), one.why()))
            .toList(),
        List.copyOf(merge.conflicts));
  }

  private NotUnderstoodNote notUnderstood(Reading.NotUnderstood one, Catalog catalog) {
    return new NotUnderstoodNote(
        one.span().in(text),
        one.span().from(),
        one.span().to(),
        one.perhaps().stream().map(sign -> new PerhapsNote(sign, catalog.nameOf(sign))).toList());
  }

  private void length(LengthRead read) {
    JsonNode sent = fitting.path(read.of()).path(read.name());
    String pointer = "/" + read.of() + "/" + read.name();
    if (!sent.isMissingNode()) {
      if (sent.isTextual() && !isSame(sent.textValue(), read.text())) {
        conflicts.add(new ConflictNote(pointer, sent.textValue(), read.span().in(text)));
      }
      return;
    }
    fitting.withObject("/" + read.of()).put(read.name(), read.text());
    spans.add(
        new SpanNote(
            pointer,
            read.span().in(text),
            read.span().from(),
            read.span().to(),
            read.confidence(),
            null,
            read.unitAssumed()));
  }

  private static boolean isSame(String one, String other) {
    try {
      return Math.abs(Quantity.parse(one).length().mm() - Quantity.parse(other).length().mm())
          < SAME_MM;
    } catch (BadQuantity | IllegalArgumentException notLengths) {
      return true; // whoever reads the request will say what is wrong with it
    }
  }

  private void cloth(ClothRead read) {
    String pointer = "/cloth/" + read.role() + "/" + read.direction();
    if (!fitting.at(pointer).isMissingNode()) {
      return;
    }
    // A test along the cloth counts only beside one around.
    if (read.direction().equals("along")
        && fitting.at("/cloth/" + read.role() + "/around").isMissingNode()) {
      return;
    }
    ObjectNode test = fitting.withObject(pointer);
    read.lengths().forEach(test::put);
    note(pointer, read.span(), read.confidence(), null);
  }

  private void sizeCut(TextRead read) {
    JsonNode sent = fitting.path("sizeCut");
    String size = sizes.isEmpty() ? read.value() : asOnTheSheet(read.value());
    if (!sent.isMissingNode() || size == null) {
      String field = sent.isTextual() ? sent.textValue() : null;
      if (size == null || field != null && !plain(field).equals(plain(size))) {
        conflicts.add(new ConflictNote("/sizeCut", field, read.span().in(text)));
      }
      return;
    }
    fitting.put("sizeCut", size);
    note("/sizeCut", read.span(), read.confidence(), null);
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

  private void sign(SignRead read) {
    boolean danger = catalog.signs().get(read.id()).redFlag();
    if (danger && read.present() && allAbsent(read.id())) {
      conflicts.add(new ConflictNote("/signs", read.id() + ", absent", read.span().in(text)));
      for (JsonNode sent : fitting.path("signs")) {
        if (read.id().equals(sent.path("sign").textValue())) {
          ((ObjectNode) sent).put("seen", "present");
        }
      }
      return;
    }
    for (JsonNode sent : fitting.path("signs")) {
      if (read.id().equals(sent.path("sign").textValue())) {
        boolean present = !"absent".equals(sent.path("seen").textValue());
        if (present != read.present()) {
          conflicts.add(
              new ConflictNote(
                  "/signs", read.id() + (present ? "" : ", absent"), read.span().in(text)));
        }
        return;
      }
    }
    ArrayNode signs = fitting.withArray("signs");
    if (signs.size() >= FittingReader.MOST_SIGNS && !danger) {
      return; // a danger too many makes a request that is refused, and is not overlooked
    }
    ObjectNode sign = signs.addObject().put("sign", read.id());
    sign.put("seen", read.present() ? "present" : "absent");
    putIfSaid(sign, "place", read.place());
    putIfSaid(sign, "side", read.side());
    putIfSaid(sign, "degree", read.degree());
    putIfSaid(sign, "amount", read.amount());
    note("/signs/" + (signs.size() - 1), read.span(), read.confidence(), read.because());
  }

  /** Whether the fields speak of a sign, and deny it wherever they do. */
  private boolean allAbsent(String id) {
    boolean absent = false;
    for (JsonNode sent : fitting.path("signs")) {
      if (id.equals(sent.path("sign").textValue())) {
        if (!"absent".equals(sent.path("seen").textValue())) {
          return false;
        }
        absent = true;
      }
    }
    return absent;
  }

  private void change(ChangeRead read) {
    for (JsonNode sent : fitting.path("earlier")) {
      if (read.adjustment().equals(sent.path("adjustment").textValue())) {
        return;
      }
    }
    ArrayNode earlier = fitting.withArray("earlier");
    if (earlier.size() >= FittingReader.MOST_EARLIER) {
      return;
    }
    ObjectNode change = earlier.addObject().put("adjustment", read.adjustment());
    putIfSaid(change, "amount", read.amount());
    putIfSaid(change, "outcome", read.outcome());
    note("/earlier/" + (earlier.size() - 1), read.span(), read.confidence(), null);
  }

  private void circumstance(TextRead read) {
    String field = CircumstancesReader.field(read.value());
    ObjectNode circumstances = fitting.withObject("/circumstances");
    JsonNode sent = circumstances.path(field);
    if (!sent.isMissingNode()) {
      if (sent.isBoolean() && !sent.booleanValue()) {
        conflicts.add(new ConflictNote("/circumstances/" + field, "false", read.span().in(text)));
        circumstances.put(field, true);
      }
      return;
    }
    if (field.equals(CircumstancesReader.IMPACT)) {
      circumstances.put(field, read.value().substring(0, read.value().indexOf('-')));
    } else {
      circumstances.put(field, true);
    }
    note("/circumstances/" + field, read.span(), read.confidence(), null);
  }

  private void months(TextRead read) {
    ObjectNode circumstances = fitting.withObject("/circumstances");
    String pointer = "/circumstances/" + MONTHS;
    int months = Integer.parseInt(read.value());
    JsonNode sent = circumstances.path(MONTHS);
    if (sent.isMissingNode()) {
      circumstances.put(MONTHS, months);
      note(pointer, read.span(), read.confidence(), null);
    } else if (sent.isInt() && sent.intValue() != months) {
      conflicts.add(new ConflictNote(pointer, sent.asText(), read.span().in(text)));
      circumstances.put(MONTHS, Math.min(months, sent.intValue())); // the more careful
    }
  }

  private void named(String list, TextRead read) {
    ArrayNode names = fitting.withArray(list);
    for (JsonNode name : names) {
      if (Objects.equals(name.textValue(), read.value())) {
        return;
      }
    }
    if (names.size() < FittingReader.MOST_WHY_NOT) {
      names.add(read.value());
      note("/" + list + "/" + (names.size() - 1), read.span(), read.confidence(), null);
    }
  }

  private void note(String pointer, Span span, double confidence, String because) {
    spans.add(
        new SpanNote(pointer, span.in(text), span.from(), span.to(), confidence, because, false));
  }

  private static void putIfSaid(ObjectNode node, String field, String value) {
    if (value != null) {
      node.put(field, value);
    }
  }

  /** Pointers of what the text alone said, to tell whose fault a fault is. */
  public static Set<String> saidByText(IntakeAnswer read) {
    return read.spans().stream().map(SpanNote::pointer).collect(Collectors.toUnmodifiableSet());
  }
}
