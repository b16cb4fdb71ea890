package easewright.cloth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class StretchTestTest {

  private static final double INCH = 25.4;

  // Common practice: "75 percent stretch" means that 4 in stretches to 7 in.
  @Test
  void four_inches_pulled_to_seven_stretch_by_seventy_five_percent() {
    assertEquals(0.75, new StretchTest(4 * INCH, 7 * INCH, null).stretch().value(), 1e-12);
  }

  // ASTM D2594: stretch % = 100 (L_load − L0)/L0, growth % = 100 (L_recovered − L0)/L0. EN 14704-1:
  // recovery = 100 − unrecovered elongation, relative to the elongation.
  @Test
  void
      a_hundred_millimetres_held_at_one_fifty_and_back_to_one_oh_two_grows_two_percent_and_recovers_ninety_six() {
    StretchTest test = new StretchTest(100, 150, 102.0);
    assertEquals(0.50, test.stretch().value(), 1e-12);
    assertEquals(0.02, test.growth().orElseThrow().value(), 1e-12);
    assertEquals(0.96, test.recovery().orElseThrow().value(), 1e-12);
  }

  @Test
  void cloth_nobody_let_go_of_has_no_growth_and_no_recovery() {
    StretchTest test = new StretchTest(100, 150, null);
    assertTrue(test.growth().isEmpty());
    assertTrue(test.recovery().isEmpty());
    assertTrue(new StretchTest(100, 100, 100.0).recovery().isEmpty());
  }

  @Test
  void readings_no_cloth_can_give_are_refused_by_name() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new StretchTest(100, 90, null))
            .getMessage()
            .contains("shorter"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new StretchTest(100, 150, 151.0))
            .getMessage()
            .contains("longer"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new StretchTest(100, 150, 90.0))
            .getMessage()
            .contains("shorter"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new StretchTest(0, 150, null))
            .getMessage()
            .contains("zero"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new StretchTest(10, 150, null))
            .getMessage()
            .contains("unit"));
    assertThrows(IllegalArgumentException.class, () -> new StretchTest(100, Double.NaN, null));
    assertThrows(IllegalArgumentException.class, () -> new StretchTest(100, 150, Double.NaN));
  }

  // Propagated error against simulation of the readings (general statistics).
  @Test
  void stated_errors_are_those_of_simulated_readings() {
    Random random = new Random(20260101);
    StretchTest test = new StretchTest(100, 160, 108.0);
    int draws = 60_000;
    double[] sums = new double[6];
    for (int i = 0; i < draws; i++) {
      double l0 = 100 + random.nextGaussian();
      double l1 = 160 + random.nextGaussian();
      double l2 = 108 + random.nextGaussian();
      double[] seen = {(l1 - l0) / l0, (l2 - l0) / l0, (l1 - l2) / (l1 - l0)};
      for (int k = 0; k < 3; k++) {
        sums[2 * k] += seen[k];
        sums[2 * k + 1] += seen[k] * seen[k];
      }
    }
    Estimate[] stated = {
      test.stretch(), test.growth().orElseThrow(), test.recovery().orElseThrow()
    };
    for (int k = 0; k < 3; k++) {
      double mean = sums[2 * k] / draws;
      double sd = Math.sqrt(sums[2 * k + 1] / draws - mean * mean);
      assertEquals(sd, stated[k].sd(), 0.03 * sd);
    }
  }

  // By the definitions, growth = stretch · (1 − recovery).
  @Property
  void growth_is_the_stretch_that_was_not_recovered(
      @ForAll @DoubleRange(min = 20, max = 300) double marked,
      @ForAll @DoubleRange(min = 0.05, max = 2) double stretch,
      @ForAll @DoubleRange(min = 0, max = 1) double kept) {
    double stretched = marked * (1 + stretch);
    double relaxed = Math.min(stretched, marked + kept * (stretched - marked));
    StretchTest test = new StretchTest(marked, stretched, relaxed);
    assertEquals(
        test.stretch().value() * (1 - test.recovery().orElseThrow().value()),
        test.growth().orElseThrow().value(),
        1e-9);
  }
}
