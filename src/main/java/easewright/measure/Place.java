package easewright.measure;

import java.util.Optional;
import java.util.function.Function;

/**
 * The range each measurement can have, mm. The outer limits are ours: well beyond every adult and
 * teenager, and tight enough to catch a value written in the wrong unit. {@code leastSurveyed} and
 * {@code mean} are those of 2208 women of the US Army's 1988 survey (Gordon et al. 1989,
 * NATICK/TR-89/044); zero where that survey has no such measurement.
 */
enum Place {
  BUST("bust", "bust", 500, 2000, 711, 907, BodyMeasurements::bust),
  UNDERBUST("underbust", "underbust", 450, 1800, 640, 770, BodyMeasurements::underbust),
  UPPER_CHEST("upperChest", "upper chest", 500, 2000, 753, 887, BodyMeasurements::upperChest),
  BUST_POINT_WIDTH(
      "bustPointWidth", "bust-point width", 80, 450, 0, 185, BodyMeasurements::bustPointWidth),
  SHOULDER_TO_BUST_POINT(
      "shoulderToBustPoint",
      "shoulder to bust point",
      120,
      650,
      0,
      268,
      BodyMeasurements::shoulderToBustPoint),
  // The middle for this one is a guess: the bust-point length and a few centimetres more.
  SHOULDER_TO_UNDERBUST(
      "shoulderToUnderbust",
      "shoulder to underbust",
      150,
      800,
      0,
      340,
      BodyMeasurements::shoulderToUnderbust);

  private static final Unit[] TAPE_UNITS = {Unit.CM, Unit.INCH, Unit.MM};

  private final String wireName;
  private final String words;
  private final double least;
  private final double most;
  private final double leastSurveyed;
  private final double mean;
  private final Function<BodyMeasurements, Measured> of;

  Place(
      String wireName,
      String words,
      double least,
      double most,
      double leastSurveyed,
      double mean,
      Function<BodyMeasurements, Measured> of) {
    this.wireName = wireName;
    this.words = words;
    this.least = least;
    this.most = most;
    this.leastSurveyed = leastSurveyed;
    this.mean = mean;
    this.of = of;
  }

  String wireName() {
    return wireName;
  }

  String words() {
    return words;
  }

  /** The measurement of this place, or null. */
  Measured of(BodyMeasurements body) {
    return of.apply(body);
  }

  boolean isPossible(Measured measured) {
    return isPossible(measured.value().mm());
  }

  private boolean isPossible(double mm) {
    return mm >= least && mm <= most;
  }

  Optional<Remark> remark(Measured measured) {
    double mm = measured.value().mm();
    if (!isPossible(mm)) {
      return Optional.of(outOfRange(measured));
    }
    // A large girth in inches written as centimetres ("50 cm") stays within the outer limits.
    if (mm < leastSurveyed) {
      return Optional.of(
          new Remark(
              wireName,
              Remark.Kind.UNLIKELY,
              "The %s of %s is below all 2208 of a large survey of women, where the least was %s."
                  .formatted(words, measured.text(), text(leastSurveyed, measured)),
              slip(measured)
                  .map(slip -> "Check the unit: was " + slip + " meant?")
                  .orElse("Check the unit and measure again.")));
    }
    return Optional.empty();
  }

  private Remark outOfRange(Measured measured) {
    return new Remark(
        wireName,
        Remark.Kind.IMPOSSIBLE,
        "The %s of %s is outside what a tape can show there, %s to %s."
            .formatted(words, asWritten(measured), text(least, measured), text(most, measured)),
        slip(measured)
            .map(slip -> asWritten(measured) + " is probably " + slip + ": write it so.")
            .orElse("Measure the " + words + " again and write it with its unit."));
  }

  /** The same number in another unit, if that is possible; of several the most usual one. */
  private Optional<String> slip(Measured measured) {
    double number = measured.value().mm() / measured.writtenIn().factor();
    String best = null;
    double nearest = Double.MAX_VALUE;
    for (Unit unit : TAPE_UNITS) {
      double mm = number * unit.factor();
      double distance = Math.abs(Math.log(mm / mean));
      if (unit != measured.writtenIn() && isPossible(mm) && distance < nearest) {
        best = Rounded.text(number, 2) + " " + unit.symbol();
        nearest = distance;
      }
    }
    return Optional.ofNullable(best);
  }

  private static String asWritten(Measured measured) {
    double number = measured.value().mm() / measured.writtenIn().factor();
    return Rounded.text(number, 2) + " " + measured.writtenIn().symbol();
  }

  private static String text(double mm, Measured like) {
    return Length.ofMm(mm).text(like.system());
  }
}
