package easewright.clinic;

/**
 * So many of so many cases. The share is told only of groups large enough to mean something, and
 * always with the interval the true share may well lie in.
 *
 * @param part how many
 * @param whole of how many
 */
public record Share(int part, int whole) {
  /** Of fewer cases no share is told, only the counts. */
  public static final int LEAST = 5;

  /** The standard normal deviate of a two-sided interval of 95 %. */
  private static final double Z = 1.959964;

  public Share {
    if (part < 0 || part > whole) {
      throw new IllegalArgumentException("A part can't be more than the whole.");
    }
  }

  /** Whether there are too few cases to tell a share. */
  public boolean tooFew() {
    return whole < LEAST;
  }

  /** The share as a fraction. */
  public double fraction() {
    return (double) part / whole;
  }

  /** Where the interval begins, a fraction. */
  public double from() {
    return Math.max(0, middle() - halfWidth());
  }

  /** Where the interval ends, a fraction. */
  public double to() {
    return Math.min(1, middle() + halfWidth());
  }

  // Wilson 1927, Journal of the American Statistical Association 22:209: the score interval.

  private double middle() {
    return (fraction() + Z * Z / (2 * whole)) / (1 + Z * Z / whole);
  }

  private double halfWidth() {
    double spread = fraction() * (1 - fraction()) / whole + Z * Z / (4.0 * whole * whole);
    return Z * Math.sqrt(spread) / (1 + Z * Z / whole);
  }
}
