package easewright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.size.SizeChart;
import easewright.size.SizeSystem;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SharpeningPropertiesTest {
  private static final SizeChart CHART = SizeSystem.EN.chart();

  // Information never has negative value: expected value of sample information ≥ 0 (Howard 1966,
  // from memory).
  @Property(tries = 60)
  void measuring_more_exactly_never_leaves_the_size_less_sure(
      @ForAll @DoubleRange(min = 650, max = 1000) double under,
      @ForAll @DoubleRange(min = 110, max = 230) double difference,
      @ForAll @DoubleRange(min = 3, max = 15) double underSd,
      @ForAll @DoubleRange(min = 3, max = 15) double bustSd) {
    Measured underbust = new Measured(Length.ofMm(under), underSd);
    Measured bust = new Measured(Length.ofMm(under + difference), bustSd);
    Sharpening sharpening = new Sharpening(CHART);
    double now = sharpening.now(bust, underbust);
    double betterBust = sharpening.withBetterBust(bust, underbust);
    double betterUnder = sharpening.withBetterUnderbust(bust, underbust);
    // The grid over the future reading is cut off at four standard deviations.
    assertTrue(betterBust >= now - 1e-3, now + " " + betterBust);
    assertTrue(betterUnder >= now - 1e-3, now + " " + betterUnder);
    assertTrue(betterBust <= 1 && betterUnder <= 1);
  }

  // By simulation: draw the future reading, then compute the best size's probability from the
  // chart.
  @Test
  void the_gain_agrees_with_simulated_measurings() {
    Measured underbust = new Measured(Length.ofMm(765), 10.2);
    Measured bust = new Measured(Length.ofMm(915), 10.2);
    SplittableRandom random = new SplittableRandom(11);
    double sum = 0;
    int tries = 4000;
    for (int i = 0; i < tries; i++) {
      double reading = 915 + Math.sqrt(0.75) * 10.2 * random.nextGaussian();
      sum +=
          CHART
              .estimate(new Measured(Length.ofMm(reading), 5.1), underbust)
              .best()
              .orElseThrow()
              .probability();
    }
    assertEquals(sum / tries, new Sharpening(CHART).withBetterBust(bust, underbust), 0.006);
  }

  // With the underbust in the middle of its band only the bust can settle the cup.
  @Test
  void the_girth_that_lies_on_a_border_is_the_one_to_measure_again() {
    Measured underbust = new Measured(Length.ofMm(750), 3);
    Measured bust = new Measured(Length.ofMm(910), 10);
    Sharpening sharpening = new Sharpening(CHART);
    assertTrue(
        sharpening.withBetterBust(bust, underbust)
            > sharpening.withBetterUnderbust(bust, underbust) + 0.05);
  }

  @Property(tries = 200)
  void combined_measurings_err_less_than_the_best_of_them_and_lie_among_them(
      @ForAll @DoubleRange(min = 700, max = 800) double one,
      @ForAll @DoubleRange(min = 700, max = 800) double two,
      @ForAll @DoubleRange(min = 2, max = 15) double oneSd,
      @ForAll @DoubleRange(min = 2, max = 15) double twoSd) {
    Measured combined =
        Measured.combined(
            List.of(new Measured(Length.ofMm(one), oneSd), new Measured(Length.ofMm(two), twoSd)));
    assertTrue(combined.sdMm() < Math.min(oneSd, twoSd));
    assertTrue(combined.value().mm() >= Math.min(one, two) - 1e-9);
    assertTrue(combined.value().mm() <= Math.max(one, two) + 1e-9);
  }

  // Repeatability limit of ISO 5725-6 (from memory): 2.8 standard deviations of one reading.
  @Test
  void two_readings_agree_up_to_the_repeatability_limit() {
    for (double sd : new double[] {5.1, 10.2}) {
      Measured one = new Measured(Length.ofMm(800), sd);
      assertTrue(
          Agreement.holds(List.of(one, new Measured(Length.ofMm(800 + 2.7 * sd), sd)), 0.95));
      assertTrue(
          !Agreement.holds(List.of(one, new Measured(Length.ofMm(800 + 2.85 * sd), sd)), 0.95));
    }
    assertTrue(Agreement.holds(List.of(new Measured(Length.ofMm(800), 5)), 0.95));
  }
}
