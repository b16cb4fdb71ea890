package easewright.measure;

import java.util.Optional;

/**
 * The middle 99 % (0.5 to 99.5 %) of two girths compared, computed from the 2208 women of the US
 * Army's 1988 survey (Gordon et al. 1989, NATICK/TR-89/044). Young, fit and none pregnant or
 * nursing, so outside the window means measure again, never that a body is wrong.
 */
enum Window {
  BUST_OVER_UNDERBUST(
      Place.BUST,
      Place.UNDERBUST,
      true,
      1.085,
      1.305,
      "a bust tape that sank at the back, or a bra that flattens",
      "an underbust tape pulled snug, or a padded bra"),
  BUST_LESS_UNDERBUST(
      Place.BUST,
      Place.UNDERBUST,
      false,
      63,
      229,
      "a bust tape that sank at the back, or a bra that flattens",
      "an underbust tape pulled snug, or a padded bra"),
  UPPER_OVER_UNDERBUST(
      Place.UPPER_CHEST,
      Place.UNDERBUST,
      true,
      1.062,
      1.260,
      "an upper chest tape pulled snug, or an underbust tape held slack",
      "an upper chest tape that slid down over the bust, or raised arms"),
  UPPER_OVER_BUST(
      Place.UPPER_CHEST,
      Place.BUST,
      true,
      0.898,
      1.055,
      "an upper chest tape pulled snug, or a padded bra",
      "a bust tape that sank at the back, or an upper chest tape held slack"),
  WIDTH_OVER_BUST(
      Place.BUST_POINT_WIDTH,
      Place.BUST,
      true,
      0.162,
      0.245,
      "the width from the centre front to one bust point only",
      "a tape that followed the curve instead of going straight across");

  private final Place first;
  private final Place second;
  private final boolean ratio;
  private final double low;
  private final double high;
  private final String slipWhenLow;
  private final String slipWhenHigh;

  Window(
      Place first,
      Place second,
      boolean ratio,
      double low,
      double high,
      String slipWhenLow,
      String slipWhenHigh) {
    this.first = first;
    this.second = second;
    this.ratio = ratio;
    this.low = low;
    this.high = high;
    this.slipWhenLow = slipWhenLow;
    this.slipWhenHigh = slipWhenHigh;
  }

  /** Whether the other window speaks of the same two girths. */
  boolean samePairAs(Window other) {
    return first == other.first && second == other.second;
  }

  /** A remark if both were measured, both are possible, and they fall outside. */
  Optional<Remark> remark(BodyMeasurements body) {
    Measured one = first.of(body);
    Measured two = second.of(body);
    if (one == null || two == null || !first.isPossible(one) || !second.isPossible(two)) {
      return Optional.empty();
    }
    double seen = ratio ? one.value().mm() / two.value().mm() : one.value().mm() - two.value().mm();
    if (seen >= low && seen <= high) {
      return Optional.empty();
    }
    return Optional.of(
        new Remark(
            first.wireName(),
            Remark.Kind.UNLIKELY,
            problem(seen, one.system()),
            "Measure both again, level and without pulling; a usual slip is "
                + (seen < low ? slipWhenLow : slipWhenHigh)
                + "."));
  }

  private String problem(double seen, UnitSystem system) {
    String relation = ratio ? "The %s is %s times the %s" : "The %s less the %s is %s";
    String stated =
        ratio
            ? relation.formatted(first.words(), Rounded.fixed(seen, 3), second.words())
            : relation.formatted(first.words(), second.words(), text(seen, system));
    return stated
        + "; 99 of 100 women in a large survey fell between "
        + text(low, system)
        + " and "
        + text(high, system)
        + ".";
  }

  private String text(double number, UnitSystem system) {
    return ratio ? Rounded.fixed(number, 3) : Length.ofMm(number).text(system);
  }
}
