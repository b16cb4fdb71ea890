package easewright.check;

import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.size.SizeChance;
import easewright.size.SizeChart;
import java.util.function.Function;

/**
 * The value of a further, better measurement for choosing the size. Halving the error also moves
 * the reading, by a normal amount of variance (1 − 1/4)·sd²; the best size's probability is
 * averaged over that distribution (expected value of sample information, Howard 1966, from memory).
 * It is never below the current probability.
 */
final class Sharpening {
  /** Grid over the future reading, in standard deviations; one in 15,000 lies beyond it. */
  private static final double REACH = 4;

  private static final int POINTS = 41;

  private final SizeChart chart;

  Sharpening(SizeChart chart) {
    this.chart = chart;
  }

  /** The best size's current probability. */
  double now(Measured bust, Measured underbust) {
    return best(bust, underbust);
  }

  /** Its expected probability once the error of the bust is halved. */
  double withBetterBust(Measured bust, Measured underbust) {
    return expected(bust, better -> best(better, underbust));
  }

  /** Its expected probability once the error of the underbust is halved. */
  double withBetterUnderbust(Measured bust, Measured underbust) {
    return expected(underbust, better -> best(bust, better));
  }

  private double best(Measured bust, Measured underbust) {
    return chart.estimate(bust, underbust).best().map(SizeChance::probability).orElse(0.0);
  }

  private static double expected(Measured of, Function<Measured, Double> best) {
    double moves = Math.sqrt(0.75) * of.sdMm();
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < POINTS; i++) {
      double z = -REACH + 2 * REACH * i / (POINTS - 1);
      double weight = Math.exp(-z * z / 2);
      Length reading = Length.ofMm(Math.max(0, of.value().mm() + z * moves));
      sum += weight * best.apply(new Measured(reading, of.sdMm() / 2, of.writtenIn()));
      weights += weight;
    }
    return sum / weights;
  }
}
