package easewright.clinic;

import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;

/**
 * A number of cases out of a total. The share is given only for groups large enough to be
 * meaningful, and always with its confidence interval.
 *
 * @param part number of cases
 * @param whole total
 */
public record Share(int part, int whole) {
  /** With fewer cases only the counts are given, no share. */
  public static final int LEAST = 5;

  private static final double ERROR_RATE = 0.05;

  public Share {
    if (part < 0 || part > whole) {
      throw new IllegalArgumentException("A part can't be more than the whole.");
    }
  }

  /** Whether there are too few cases for a share. */
  public boolean tooFew() {
    return whole < LEAST;
  }

  /** The share as a fraction. */
  public double fraction() {
    return (double) part / whole;
  }

  /** Lower bound of the interval, a fraction. */
  public double from() {
    return interval().getLowerBound();
  }

  /** Upper bound of the interval, a fraction. */
  public double to() {
    return interval().getUpperBound();
  }

  /** The score interval of 95 % (Wilson 1927, J Am Stat Assoc 22:209). */
  private Interval interval() {
    return BinomialConfidenceInterval.WILSON_SCORE.fromErrorRate(whole, part, ERROR_RATE);
  }
}
