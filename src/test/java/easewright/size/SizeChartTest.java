package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.measure.Length;
import easewright.measure.Measured;
import java.util.LinkedHashMap;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class SizeChartTest {
  private static final SizeChart NAMED =
      SizeChart.of(
          List.of(
              SizeCell.named("S", Range.ofCm(68, 74), Range.ofCm(80, 87)),
              SizeCell.named("M", Range.ofCm(74, 80), Range.ofCm(87, 94)),
              SizeCell.named("L", Range.ofCm(80, 86), Range.ofCm(94, 101))));

  // Band and cup classes of EN 13402-3, with bands in whole centimetres as in the standard.
  private static SizeChart grid() {
    LinkedHashMap<String, Range> bands = new LinkedHashMap<>();
    bands.put("70", Range.ofCm(68, 72));
    bands.put("75", Range.ofCm(73, 77));
    bands.put("80", Range.ofCm(78, 82));
    LinkedHashMap<String, Range> cups = new LinkedHashMap<>();
    cups.put("A", Range.ofCm(12, 14));
    cups.put("B", Range.ofCm(14, 16));
    cups.put("C", Range.ofCm(16, 18));
    return SizeChart.grid(bands, cups);
  }

  // Independent errors multiply: products of two normal probabilities from Commons Math.
  @Test
  void a_size_with_ranges_has_the_product_of_its_two_probabilities() {
    SizeEstimate estimate = NAMED.estimate(measured(92, 10), measured(79, 8));
    double under = new NormalDistribution(790, 8).probability(740, 800);
    double bust = new NormalDistribution(920, 10).probability(870, 940);
    assertEquals(under * bust, estimate.probability("M"), 1e-12);
    assertEquals("M", estimate.best().orElseThrow().cell().id());
    assertFalse(estimate.between(0.6));
  }

  @Test
  void a_body_on_a_corner_is_between_sizes_and_half_outside() {
    SizeEstimate estimate = NAMED.estimate(measured(94, 10), measured(80, 10));
    assertTrue(estimate.between(0.6));
    assertEquals(0.25, estimate.probability("M"), 1e-6);
    assertEquals(0.25, estimate.probability("L"), 1e-6);
    assertEquals(0.5, estimate.outside(), 1e-6);
  }

  // Design choice of 60 to 40: one girth at a shared edge plus 0.25 SD splits Φ(0.25) = 0.5987 to
  // 0.4013, plus 0.26 SD 0.6026 to 0.3974 (normal table).
  @Test
  void a_split_closer_than_sixty_to_forty_is_between_and_a_wider_one_is_not() {
    SizeChart edge =
        SizeChart.of(
            List.of(
                SizeCell.named("S", Range.ANY, Range.ofCm(60, 90)),
                SizeCell.named("M", Range.ANY, Range.ofCm(90, 120))));
    assertTrue(edge.estimate(measured(90.25, 10), measured(75, 10)).between(0.6));
    assertFalse(edge.estimate(measured(90.26, 10), measured(75, 10)).between(0.6));
  }

  @Test
  void gaps_of_whole_centimetre_ranges_are_met_half_way() {
    SizeEstimate estimate = grid().estimate(measured(87.5, 3), measured(72.5, 3));
    assertEquals(estimate.probability("70 B"), estimate.probability("75 B"), 1e-9);
    assertEquals(0, estimate.outside(), 0.01);
    assertEquals(Range.ofCm(68, 72), grid().cell("70 A").orElseThrow().underbust());
  }

  @Test
  void named_sizes_in_whole_centimetres_meet_half_way_in_both_girths() {
    SizeChart chart =
        SizeChart.of(
            List.of(
                SizeCell.named("M", Range.ofCm(74, 79), Range.ofCm(87, 93)),
                SizeCell.named("S", Range.ofCm(68, 73), Range.ofCm(80, 86))));
    SizeEstimate estimate = chart.estimate(measured(86.5, 5), measured(73.5, 5));
    assertEquals(0.25, estimate.probability("S"), 1e-6);
    assertEquals(0.25, estimate.probability("M"), 1e-6);
  }

  @Test
  void a_size_that_goes_by_bust_alone_ignores_the_underbust() {
    SizeChart chart = SizeChart.of(List.of(SizeCell.named("M", Range.ANY, Range.ofCm(87, 94))));
    double bust = new NormalDistribution(920, 10).probability(870, 940);
    for (double underbust : new double[] {60, 79, 140}) {
      SizeEstimate estimate = chart.estimate(measured(92, 10), measured(underbust, 10));
      assertEquals(bust, estimate.probability("M"), 1e-12);
    }
  }

  // Far above the mean: the tail of a normal distribution from Commons Math, by symmetry.
  @Test
  void a_size_far_above_the_measured_girth_keeps_its_small_probability() {
    SizeEstimate estimate = NAMED.estimate(measured(86, 10), measured(77, 10));
    double bust = new NormalDistribution(0, 1).probability(-15, -8);
    double under = new NormalDistribution(770, 10).probability(800, 860);
    assertEquals(bust * under, estimate.probability("L"), bust * under * 1e-6);
  }

  // Nominal bust ranges of EN 13402-3 for the bands 75 and 80, read as plain girths.
  @Test
  void a_grid_by_bust_girth_multiplies_too_and_knows_its_sisters() {
    SizeCell b75 = SizeCell.ofBust("75B", "75", "B", Range.ofCm(73, 77), Range.ofCm(89, 91));
    SizeCell a80 = SizeCell.ofBust("80A", "80", "A", Range.ofCm(78, 82), Range.ofCm(92, 94));
    SizeCell a75 = SizeCell.ofBust("75A", "75", "A", Range.ofCm(73, 77), Range.ofCm(87, 89));
    SizeChart chart = SizeChart.of(List.of(a75, b75, a80));
    assertEquals(List.of(a80), chart.sisters(b75));
    SizeEstimate estimate = chart.estimate(measured(90, 7), measured(76, 7));
    double bust = new NormalDistribution(900, 7).probability(890, 910);
    double under = new NormalDistribution(760, 7).probability(730, 775);
    assertEquals(bust * under, estimate.probability("75B"), 1e-12);
  }

  @Test
  void a_wide_gap_between_sizes_stays_outside() {
    SizeChart gap =
        SizeChart.of(
            List.of(
                SizeCell.named("S", Range.ofCm(68, 72), Range.ANY),
                SizeCell.named("L", Range.ofCm(80, 84), Range.ANY)));
    assertEquals(1, gap.estimate(measured(90, 5), measured(76, 5)).outside(), 1e-6);
  }

  // One band up with one cup down: common practice.
  @Test
  void sisters_are_one_band_and_one_cup_away_in_opposite_directions() {
    SizeChart chart = grid();
    SizeCell cell = chart.cell("75 B").orElseThrow();
    assertEquals(List.of("70 C", "80 A"), chart.sisters(cell).stream().map(SizeCell::id).toList());
    assertEquals(List.of(), chart.sisters(chart.cell("70 A").orElseThrow()));
    assertEquals(List.of(), NAMED.sisters(NAMED.cells().get(1)));
  }

  @Test
  void neighbours_are_the_other_sizes_at_least_as_probable_as_asked() {
    SizeEstimate estimate = grid().estimate(measured(90.5, 7), measured(75.5, 7));
    List<String> found =
        estimate.neighbours(0.1).stream().map(chance -> chance.cell().id()).toList();
    assertFalse(found.contains(estimate.best().orElseThrow().cell().id()));
    assertTrue(found.contains("75 A") && found.contains("75 C"), found::toString);
    assertTrue(estimate.neighbours(0.1).stream().allMatch(c -> c.probability() >= 0.1));
  }

  @Test
  void a_body_far_from_the_chart_has_no_best_size() {
    SizeEstimate estimate = grid().estimate(measured(150, 10), measured(130, 10));
    assertTrue(estimate.best().isEmpty());
    assertEquals(1, estimate.outside(), 0);
    assertFalse(estimate.between(0.6));
  }

  @Test
  void a_chart_that_contradicts_itself_is_refused() {
    SizeCell small = SizeCell.named("S", Range.ofCm(68, 74), Range.ANY);
    SizeCell wide = SizeCell.named("M", Range.ofCm(73, 80), Range.ANY);
    SizeCell bust = SizeCell.named("B", Range.ofCm(80, 90), Range.ofCm(90, 95));
    SizeCell cup = SizeCell.ofDifference("C", "95", "C", Range.ofCm(90, 95), Range.ofCm(16, 18));
    refused(List.of());
    refused(List.of(small, small));
    refused(List.of(small, wide));
    refused(List.of(bust, cup));
    assertThrows(IllegalArgumentException.class, () -> Range.ofMm(10, 10));
    assertThrows(IllegalArgumentException.class, () -> Range.ofMm(10, Double.NaN));
  }

  private static void refused(List<SizeCell> cells) {
    assertThrows(IllegalArgumentException.class, () -> SizeChart.of(cells));
  }

  private static Measured measured(double cm, double sdMm) {
    return new Measured(Length.ofCm(cm), sdMm);
  }
}
