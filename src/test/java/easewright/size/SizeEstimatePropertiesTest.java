package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.measure.Length;
import easewright.measure.Measured;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class SizeEstimatePropertiesTest {

  // In the other order, by brute force: trapezoids over the bust, and for each bust the probability
  // of the underbusts that give this cell, with the normal distribution of Commons Math.
  @Property(tries = 40)
  void every_cell_agrees_with_brute_force_over_the_bust(
      @ForAll @DoubleRange(min = 690, max = 860) double underbust,
      @ForAll @DoubleRange(min = 90, max = 220) double difference,
      @ForAll @DoubleRange(min = 1, max = 25) double underSd,
      @ForAll @DoubleRange(min = 1, max = 25) double bustSd,
      @ForAll @IntRange(min = 12, max = 60) int bandStep,
      @ForAll @IntRange(min = 8, max = 40) int cupStep) {
    SizeChart chart = chart(bandStep, cupStep);
    Measured bust = new Measured(Length.ofMm(underbust + difference), bustSd);
    SizeEstimate estimate = chart.estimate(bust, new Measured(Length.ofMm(underbust), underSd));
    for (SizeCell cell : chart.cells()) {
      double expected = overBust(cell, underbust + difference, bustSd, underbust, underSd);
      assertEquals(expected, estimate.probability(cell.id()), 1e-6, cell.id());
    }
    assertEquals(estimate.best(), chart.best(bust, new Measured(Length.ofMm(underbust), underSd)));
    double inside = estimate.chances().stream().mapToDouble(SizeChance::probability).sum();
    assertEquals(1, inside + estimate.outside(), 1e-9);
    assertTrue(estimate.chances().stream().allMatch(c -> c.probability() > 0));
  }

  // Meaning of a shared body: with two sizes it counts a half for each. By simulation, three
  // standard errors of 40,000 draws.
  @Property(tries = 30)
  void a_body_in_several_sizes_counts_for_each_alike(
      @ForAll @DoubleRange(min = 700, max = 800) double underbust,
      @ForAll @DoubleRange(min = 840, max = 960) double bust,
      @ForAll @IntRange(min = 5, max = 25) int sd,
      @ForAll @IntRange(min = 1, max = 35) int shared) {
    List<SizeCell> cells = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      String name = "size " + i;
      double under = 680 + 40 * i;
      cells.add(SizeCell.named(name, Range.ofMm(under, under + 40 + shared), Range.ofMm(800, 900)));
      cells.add(SizeCell.named(name, Range.ofMm(under, under + 40), Range.ofMm(900, 960 + shared)));
    }
    SizeChart chart = SizeChart.sharing(cells);
    SizeEstimate estimate =
        chart.estimate(
            new Measured(Length.ofMm(bust), sd), new Measured(Length.ofMm(underbust), sd));
    SplittableRandom random = new SplittableRandom(11);
    int tries = 40_000;
    Map<String, Double> counts = new HashMap<>();
    for (int i = 0; i < tries; i++) {
      double b = bust + sd * random.nextGaussian();
      double u = underbust + sd * random.nextGaussian();
      List<String> holding =
          cells.stream()
              .filter(cell -> u > cell.underbust().loMm() && u <= cell.underbust().hiMm())
              .filter(cell -> b > cell.bust().loMm() && b <= cell.bust().hiMm())
              .map(SizeCell::id)
              .distinct()
              .toList();
      holding.forEach(size -> counts.merge(size, 1.0 / holding.size(), Double::sum));
    }
    double inside = 0;
    for (int i = 0; i < 4; i++) {
      double stated = estimate.probability("size " + i);
      inside += stated;
      assertEquals(counts.getOrDefault("size " + i, 0.0) / tries, stated, 0.0076, "size " + i);
    }
    assertEquals(1, inside + estimate.outside(), 1e-9);
    assertEquals(
        estimate.best(),
        chart.best(new Measured(Length.ofMm(bust), sd), new Measured(Length.ofMm(underbust), sd)));
  }

  @Test
  void simulated_readings_fall_into_the_cells_as_often_as_estimated() {
    SizeChart chart = SizeSystem.EN.chart();
    SizeEstimate estimate =
        chart.estimate(
            new Measured(Length.ofCm(91), 20 / 1.96), new Measured(Length.ofCm(76.3), 10 / 1.96));
    SplittableRandom random = new SplittableRandom(7);
    int tries = 100_000;
    Map<String, Integer> counts = new HashMap<>();
    for (int i = 0; i < tries; i++) {
      double bust = 910 + random.nextGaussian() * 20 / 1.96;
      double underbust = 763 + random.nextGaussian() * 10 / 1.96;
      String label =
          SizeSystem.EN
              .of(Length.ofMm(underbust), Length.ofMm(bust))
              .map(Designation::label)
              .orElse("outside");
      counts.merge(label, 1, Integer::sum);
    }
    for (SizeCell cell : chart.cells()) {
      double seen = (double) counts.getOrDefault(cell.id(), 0) / tries;
      assertEquals(seen, estimate.probability(cell.id()), 0.006, cell.id());
    }
    assertEquals((double) counts.getOrDefault("outside", 0) / tries, estimate.outside(), 0.006);
  }

  // A self-measured letter is near a coin flip: with 10 mm on the difference an EN letter is right
  // about 61 % of the time averaged over its class (computed), so even at its middle below 69 %.
  @Test
  void errors_of_bust_and_underbust_both_blur_the_cup() {
    double each = 10 / Math.sqrt(2);
    SizeEstimate estimate =
        SizeSystem.EN
            .chart()
            .estimate(new Measured(Length.ofCm(90), each), new Measured(Length.ofCm(75), each));
    double cup =
        estimate.chances().stream()
            .filter(chance -> chance.cell().cup().equals("B"))
            .mapToDouble(SizeChance::probability)
            .sum();
    assertEquals(new NormalDistribution(150, 10).probability(140, 160), cup, 1e-6);
  }

  private static double overBust(
      SizeCell cell, double bust, double bustSd, double under, double underSd) {
    NormalDistribution ofBust = new NormalDistribution(bust, bustSd);
    NormalDistribution ofUnder = new NormalDistribution(under, underSd);
    int steps = 10_000;
    double step = 14 * bustSd / steps;
    double sum = 0;
    for (int i = 0; i <= steps; i++) {
      double b = bust - 7 * bustSd + i * step;
      double lo = Math.max(cell.underbust().loMm(), b - cell.difference().hiMm());
      double hi = Math.min(cell.underbust().hiMm(), b - cell.difference().loMm());
      // Shortcut where the density of the underbust is practically zero.
      if (lo < hi && hi > under - 7 * underSd && lo < under + 7 * underSd) {
        sum += ofBust.density(b) * ofUnder.probability(lo, hi) * step;
      }
    }
    return sum;
  }

  private static SizeChart chart(int bandStep, int cupStep) {
    LinkedHashMap<String, Range> bands = new LinkedHashMap<>();
    LinkedHashMap<String, Range> cups = new LinkedHashMap<>();
    for (int i = 0; i < 5; i++) {
      bands.put("b" + i, Range.ofMm(690 + i * bandStep, 690 + (i + 1) * bandStep));
      cups.put("c" + i, Range.ofMm(100 + i * cupStep, 100 + (i + 1) * cupStep));
    }
    return SizeChart.grid(bands, cups);
  }
}
