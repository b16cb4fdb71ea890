package easewright.check;

import easewright.measure.Measured;
import java.util.List;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Tests whether several readings of one place agree within their errors: the sum of squared
 * deviations, each in its own standard deviations, is below the chi-squared quantile. For two
 * readings with equal errors that is ISO 5725-6's repeatability limit of 2.8 standard deviations
 * (from memory).
 */
final class Agreement {
  private Agreement() {}

  /**
   * Whether they agree.
   *
   * @param confidence probability that agreeing readings pass, e.g. 0.95
   */
  static boolean holds(List<Measured> readings, double confidence) {
    if (readings.size() < 2) {
      return true;
    }
    double mean = Measured.combined(readings).value().mm();
    double squares =
        readings.stream().mapToDouble(m -> Math.pow((m.value().mm() - mean) / m.sdMm(), 2)).sum();
    return squares
        <= new ChiSquaredDistribution(readings.size() - 1).inverseCumulativeProbability(confidence);
  }
}
