package easewright.cloth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StretchUseTest {

  // Computed by hand from 1 − 1/(1 + u·s), to whole percent: 1/11, 1/5, 1/3.
  @ParameterizedTest
  @CsvSource({"0.2, 9", "0.5, 20", "1, 33"})
  void a_cloth_of_fifty_percent_used_in_part_is_drafted_smaller_by_the_table(
      double used, long percent) {
    Estimate reduction = new StretchUse(used).reduction(new Estimate(0.5, 0));
    assertEquals(percent, Math.round(100 * reduction.value()));
  }

  // A garment smaller by the reduction, stretched by u·s, has the body's width (identity).
  @Property
  void a_reduced_width_stretched_in_wear_is_the_body_again(
      @ForAll @DoubleRange(min = 0, max = 1) double used,
      @ForAll @DoubleRange(min = 0, max = 2) double stretch) {
    double reduction = new StretchUse(used).reduction(new Estimate(stretch, 0)).value();
    assertEquals(1, (1 - reduction) * (1 + used * stretch), 1e-12);
  }

  @Property
  void scaling_for_a_cloth_and_back_leaves_the_width_alone(
      @ForAll @DoubleRange(min = 0, max = 1) double used,
      @ForAll @DoubleRange(min = 0, max = 2) double drafted,
      @ForAll @DoubleRange(min = 0, max = 2) double actual) {
    StretchUse use = new StretchUse(used);
    double there = use.widthFactor(drafted, new Estimate(actual, 0)).value();
    double back = use.widthFactor(actual, new Estimate(drafted, 0)).value();
    assertEquals(1, there * back, 1e-12);
  }

  @Test
  void a_stiffer_cloth_than_drafted_asks_for_wider_pieces() {
    Estimate factor = new StretchUse(0.5).widthFactor(0.6, new Estimate(0.4, 0.02));
    // Computed by hand: 1.3 / 1.2, and its slope −0.5 · 1.3 / 1.2².
    assertEquals(1.083333, factor.value(), 1e-6);
    assertEquals(0.02 * 0.5 * 1.3 / 1.44, factor.sd(), 1e-9);
  }

  @Test
  void use_beyond_the_whole_stretch_is_refused() {
    assertEquals(
        "stretch-used-out-of-range",
        assertThrows(ImpossibleCloth.class, () -> new StretchUse(1.1)).key());
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> new StretchUse(0.5).reduction(new Estimate(-0.1, 0)))
            .getMessage()
            .contains("zero or more"));
  }
}
