package easewright.diagnosis;

import static java.util.stream.Collectors.joining;

import easewright.fitting.Fitting;
import easewright.measure.BodyMeasurements;
import easewright.rulebook.RuleBookSource;
import easewright.size.LabelReading;
import easewright.size.LabelReading.Basis;
import easewright.size.Region;
import easewright.size.SizeChart;
import easewright.size.SizeLabel;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The body that the label of a size is for, where no sheet tells. Of the garment it tells nothing.
 *
 * @param label as it was written
 * @param readings what the label may mean, the reading taken first; never empty
 * @param how why the first was taken
 */
record LabelBody(String label, List<LabelReading> readings, How how) {
  /** Why a reading was taken. */
  enum How {
    /** The system was named, and it reads the label in one way. */
    NAMED,
    /** Its band is the only one near the girth that was measured. */
    FITS,
    /** No reading fits, but a number in centimetres is the European standard's unless said. */
    USUAL,
    /** None was taken: readings stand far apart, and none fits. */
    OPEN;

    /** Whether only the wearer can tell. */
    boolean isAssumed() {
      return this == USUAL || this == OPEN;
    }

    String wireName() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * Empty where there is a sheet, or what was cut is no label of a known system, as in a family
   * that no system is for.
   */
  static Optional<LabelBody> of(Fitting fitting, RuleBookSource source) {
    if (fitting.sheet() != null || fitting.sizeCut() == null || !source.measures().hasSizes()) {
      return Optional.empty();
    }
    String label = fitting.sizeCut().strip();
    Region named = fitting.sizeSystem();
    List<SizeLabel> sizes = SizeLabel.parse(label);
    // A bare number names a size in too many ways of counting to be taken for a band.
    boolean bare = sizes.stream().anyMatch(size -> size.letter() == null);
    if (named == null && bare) {
      return Optional.empty();
    }
    List<LabelReading> readings =
        LabelReading.of(sizes, named).stream()
            .filter(reading -> reading.basis() != Basis.INCHES_ADDED)
            .filter(reading -> named != null || isWrittenSo(label, reading.region()))
            .toList();
    return readings.isEmpty()
        ? Optional.empty()
        : Optional.of(taken(label, readings, named, fitting.body(), source));
  }

  /** JIS L 4006 alone writes the cup first; its letters stand for other differences. */
  private static boolean isWrittenSo(String label, Region region) {
    return region != Region.JP || Character.isLetter(label.charAt(0));
  }

  private static LabelBody taken(
      String label,
      List<LabelReading> readings,
      Region named,
      BodyMeasurements body,
      RuleBookSource source) {
    double near = source.parameter("beyond-the-band-size");
    List<LabelReading> fitting =
        body.underbust() == null
            ? List.of()
            : readings.stream()
                .filter(one -> distance(one, body) <= near)
                .sorted(
                    Comparator.comparingDouble((LabelReading one) -> -probability(one, body))
                        .thenComparingDouble(one -> distance(one, body)))
                .toList();
    if (readings.stream().map(LabelReading::cell).distinct().count() == 1 && named != null) {
      return new LabelBody(label, readings, How.NAMED);
    }
    if (!fitting.isEmpty()) {
      return new LabelBody(label, fitting, How.FITS);
    }
    List<LabelReading> usual = readings.stream().filter(one -> one.region() == Region.EU).toList();
    return usual.isEmpty()
        ? new LabelBody(label, readings, How.OPEN)
        : new LabelBody(label, usual, How.USUAL);
  }

  private static double distance(LabelReading reading, BodyMeasurements body) {
    return Math.abs(reading.underbustMm() - body.underbust().value().mm());
  }

  private static double probability(LabelReading reading, BodyMeasurements body) {
    return body.bust() == null
        ? 0
        : SizeChart.of(List.of(reading.cell()))
            .estimate(body.bust(), body.underbust())
            .probability(reading.cell().id());
  }

  /** The reading taken; empty where none was. */
  Optional<LabelReading> reading() {
    return how == How.OPEN ? Optional.empty() : Optional.of(readings.get(0));
  }

  /** Middle of the underbust girths the label is for, mm. */
  Optional<Double> underbustMm() {
    return reading().map(LabelReading::underbustMm);
  }

  /** Middle of the differences, bust less underbust, the label is for, mm. */
  Optional<Double> differenceMm() {
    return reading().flatMap(one -> one.bustMm().map(bust -> bust - one.underbustMm()));
  }

  /** Where the label means what was taken, or may be printed where nothing was taken. */
  List<Region> regions() {
    return readings.stream()
        .filter(one -> how == How.OPEN || one.cell().equals(readings.get(0).cell()))
        .map(LabelReading::region)
        .distinct()
        .toList();
  }

  /** What it was taken for and why, in words. */
  String says(RuleBookSource source, UnitFormatter shown) {
    String regions =
        regions().stream()
            .map(region -> source.wording().say("region-" + region.wireName()))
            .collect(joining(source.wording().say("label-or")));
    return reading()
        .map(
            one ->
                source
                    .wording()
                    .say(
                        "label-taken-" + how.wireName(),
                        "label",
                        label,
                        "regions",
                        regions,
                        "from",
                        shown.length(one.cell().underbust().loMm()),
                        "to",
                        shown.length(one.cell().underbust().hiMm())))
        .orElseGet(
            () -> source.wording().say("label-taken-open", "label", label, "regions", regions));
  }
}
