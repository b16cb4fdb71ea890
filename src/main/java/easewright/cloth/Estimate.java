package easewright.cloth;

/**
 * A computed number with the error that the readings behind it leave in it.
 *
 * @param value the number, in the unit its maker states
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

  /** The estimate less a number that has no error of its own, such as a need. */
  public Estimate minus(double exact) {
    return new Estimate(value - exact, sd);
  }

  /**
   * An estimate whose error comes from independent errors, each already multiplied by how strongly
   * it moves the value (first-order propagation).
   */
  public static Estimate of(double value, double... contributions) {
    double squares = 0;
    for (double contribution : contributions) {
      squares += contribution * contribution;
    }
    return new Estimate(value, Math.sqrt(squares));
  }
}
