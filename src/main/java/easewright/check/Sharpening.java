package easewright.check;

import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.size.SizeChance;
import easewright.size.SizeChart;
import java.util.function.Function;

/**
 * What a further, better measuring would be worth for the size. Measuring until the error is halved
 * moves the reading too, by a normal amount of variance (1 − 1/4)·sd²; the best size's probability
 * is averaged over where it may move (expected value of sample information, Howard 1966, from
 * memory). It can never be below today's.
 */
final class Sharpening {
  /** Grid over the reading to come, in standard deviations; beyond it lies one in 15,000. */
  private static final double REACH = 4;

  private static final int POINTS = 41;

  private final SizeChart chart;

  Sharpening(SizeChart chart) {
    this.chart = chart;
  }

  /** The best size's probability now. */
  double now(Measured bust, Measured underbust) {
    return best(bust, underbust);
  }

  /** The same, to be expected once the error of the bust is halved. */
  double withBetterBust(Measured bust, Measured underbust) {
    return expected(bust, better -> best(better, underbust));
  }

  /** The same, to be expected once the error of the underbust is halved. */
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
