package easewright.check;

import easewright.check.SizeAnswer.ConvertedNote;
import easewright.check.SizeAnswer.PrintedNote;
import easewright.check.SizeAnswer.ReadingNote;
import easewright.check.SizeAnswer.SpanNote;
import easewright.diagnosis.UnitFormatter;
import easewright.fitting.Fitting;
import easewright.measure.BodyMeasurements;
import easewright.rulebook.Wording;
import easewright.size.LabelReading;
import easewright.size.Range;
import easewright.size.Region;
import easewright.size.SizeLabel;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/** Lists the possible meanings of a label, and the labels for girths in each region. */
final class Conversion {
  private final Fitting fitting;
  private final Wording wording;
  private final UnitFormatter shown;

  Conversion(Fitting fitting, Wording wording) {
    this.fitting = fitting;
    this.wording = wording;
    this.shown = new UnitFormatter(fitting.units());
  }

  /** The labels for girths in mm in every region. */
  List<PrintedNote> labels(double underbustMm, double bustMm) {
    return PrintedLabels.of(underbustMm, bustMm).stream()
        .map(
            printed ->
                new PrintedNote(
                    printed.region().wireName(),
                    printed.basis().wireName(),
                    printed.label(),
                    wording.say("region-" + printed.region().wireName())))
        .toList();
  }

  /** The label with each of its readings. */
  ConvertedNote converted(SizeQuestion question) {
    List<SizeLabel> label = question.label();
    Region printedIn = question.printedIn();
    List<LabelReading> readings = LabelReading.of(label, printedIn);
    return new ConvertedNote(
        label.isEmpty()
            ? String.join(" / ", question.labelOnSheet())
            : label.stream().map(SizeLabel::toString).collect(Collectors.joining(" / ")),
        printedIn == null ? null : printedIn.wireName(),
        question.labelOnSheet(),
        readings.stream().map(this::note).toList(),
        label.isEmpty() ? List.of() : ambiguities(label, printedIn, readings));
  }

  private ReadingNote note(LabelReading reading) {
    BodyMeasurements body = fitting.body();
    boolean measured = body.bust() != null && body.underbust() != null;
    return new ReadingNote(
        reading.region().wireName(),
        reading.basis().wireName(),
        wording.say("reading-" + reading.basis().wireName()),
        span(reading.cell().underbust()),
        bust(reading),
        measured ? reading.probability(body.bust(), body.underbust()) : null,
        reading.bustMm().map(bust -> labels(reading.underbustMm(), bust)).orElse(List.of()));
  }

  private SpanNote bust(LabelReading reading) {
    if (reading.cell().bust() != null) {
      return span(reading.cell().bust());
    }
    Range difference = reading.cell().difference();
    return difference == null
        ? null
        : span(
            Range.ofMm(
                reading.underbustMm() + difference.loMm(),
                reading.underbustMm() + difference.hiMm()));
  }

  private SpanNote span(Range range) {
    return new SpanNote(
        range.loMm(),
        range.hiMm(),
        wording.say("span", "from", shown.length(range.loMm()), "to", shown.length(range.hiMm())));
  }

  private List<String> ambiguities(
      List<SizeLabel> label, Region printedIn, List<LabelReading> readings) {
    List<String> said = new ArrayList<>();
    boolean inches = readings.stream().anyMatch(r -> r.region().countsInches());
    long regions = readings.stream().map(LabelReading::region).distinct().count();
    sayIf(said, printedIn == null && regions > 1, "label-region-unknown");
    sayIf(said, inches && hasRegion(readings, Region.UK, Region.US), "label-inches-or-added");
    List<String> letters = label.stream().map(SizeLabel::letter).filter(Objects::nonNull).toList();
    sayIf(said, inches && !letters.isEmpty(), "label-cup-from-band-or-underbust");
    sayIf(said, !letters.isEmpty(), "label-letter-needs-system");
    sayIf(
        said,
        inches && letters.stream().anyMatch(one -> one.matches("(?i)DDD|DD|[E-L]")),
        "label-doubled-letters");
    sayIf(said, hasRegion(readings, Region.FR), "label-french-steps");
    sayIf(said, hasRegion(readings, Region.IT), "label-italian-letter");
    sayIf(said, true, "label-makers-differ");
    return said;
  }

  private static boolean hasRegion(List<LabelReading> readings, Region... regions) {
    return readings.stream().anyMatch(reading -> List.of(regions).contains(reading.region()));
  }

  private void sayIf(List<String> said, boolean holds, String key) {
    if (holds) {
      said.add(wording.say(key));
    }
  }
}
