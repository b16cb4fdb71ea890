package easewright.pattern;

/**
 * A range of a body measurement in mm, excluding its start and including its end, so that a
 * measurement on a border belongs to the smaller size (as in the cup classes of EN 13402-3).
 *
 * @param fromMm the start, exclusive
 * @param toMm the end, inclusive
 */
public record Span(double fromMm, double toMm) {

  // Borders are converted from inches and centimetres: half a millimetre is not a gap.
  static final double BORDER_MM = 0.5;

  /**
   * @throws IllegalArgumentException if the end is not greater than the start
   */
  public Span {
    if (!(fromMm >= 0) || !(toMm > fromMm) || !Double.isFinite(toMm)) {
      throw new SheetRefusal("range-backwards");
    }
  }

  /** Whether a measurement in mm lies within. */
  public boolean holds(double mm) {
    return mm > fromMm && mm <= toMm;
  }

  /** Whether it shares more than a border with another. */
  boolean meets(Span other) {
    return Math.min(toMm, other.toMm) - Math.max(fromMm, other.fromMm) > BORDER_MM;
  }

  /** Whether another contains it; their borders may coincide. */
  boolean isWithin(Span other) {
    return fromMm > other.fromMm - BORDER_MM && toMm < other.toMm + BORDER_MM;
  }

  /** The middle, in mm. */
  public double middleMm() {
    return (fromMm + toMm) / 2;
  }
}
