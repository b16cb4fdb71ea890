package easewright.cloth;

/**
 * A computed number with the error propagated from its readings.
 *
 * @param value the number, in the unit documented by its source
 * @param sd one standard deviation, in the same unit, zero or more
 */
public record Estimate(double value, double sd) {

  /**
   * @throws IllegalArgumentException if the value is not finite or the error is negative
   */
  public Estimate {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("An estimate is a finite number.");
    }
    if (!Double.isFinite(sd) || sd < 0) {
      throw new IllegalArgumentException("The error of an estimate is zero or more.");
    }
  }

  /** The estimate minus an exact number, such as a requirement. */
  public Estimate minus(double exact) {
    return new Estimate(value - exact, sd);
  }

  /**
   * An estimate with independent errors, each already multiplied by its sensitivity (first-order
   * propagation).
   */
  public static Estimate of(double value, double... contributions) {
    double squares = 0;
    for (double contribution : contributions) {
      squares += contribution * contribution;
    }
    return new Estimate(value, Math.sqrt(squares));
  }
}
