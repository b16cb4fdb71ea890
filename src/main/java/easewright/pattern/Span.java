package easewright.pattern;

/**
 * A range of a body measurement in mm, without its start and with its end, so that a measurement on
 * a border belongs to the smaller size (as in the cup classes of EN 13402-3).
 *
 * @param fromMm the start, exclusive
 * @param toMm the end, inclusive
 */
public record Span(double fromMm, double toMm) {

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

  /** The middle, in mm. */
  public double middleMm() {
    return (fromMm + toMm) / 2;
  }
}
