package easewright.clinic;

import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;

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

  private static final double ERROR_RATE = 0.05;

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
    return interval().getLowerBound();
  }

  /** Where the interval ends, a fraction. */
  public double to() {
    return interval().getUpperBound();
  }

  /** The score interval of 95 % (Wilson 1927, J Am Stat Assoc 22:209). */
  private Interval interval() {
    return BinomialConfidenceInterval.WILSON_SCORE.fromErrorRate(whole, part, ERROR_RATE);
  }
}
