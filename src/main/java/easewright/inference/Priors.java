package easewright.inference;

import java.util.stream.DoubleStream;

/** What is believed before anything is observed, as odds p/(1 − p) of each cause. */
final class Priors {
  private Priors() {}

  /**
   * Odds scaled together so that "nothing wrong" has this share among no cause, one and two.
   *
   * @param odds of each cause
   * @param share between 0 and 1, both excluded
   */
  static double[] leaving(double[] odds, double share) {
    double singles = DoubleStream.of(odds).sum();
    double pairs = (singles * singles - DoubleStream.of(odds).map(o -> o * o).sum()) / 2;
    // 1 + singles k + pairs k² weighs as much as "nothing wrong" leaves for everything else.
    double rest = 1 / share - 1;
    double scale =
        pairs == 0
            ? rest / singles
            : (Math.sqrt(singles * singles + 4 * pairs * rest) - singles) / (2 * pairs);
    return DoubleStream.of(odds).map(o -> o * scale).toArray();
  }
}
