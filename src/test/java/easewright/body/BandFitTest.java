package easewright.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.cloth.Estimate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class BandFitTest {

  // Engineering strain, (final − original)/original: 720 mm worn on 792 mm is 10 %.
  @Test
  void a_band_ten_percent_shorter_than_the_body_is_stretched_by_its_own_length() {
    Estimate strain = new BandFit(792, 720, 10, 3).strain();
    assertEquals(0.1, strain.value(), 1e-12);
    assertEquals(Math.hypot(10.0 / 720, 3 * 1.1 / 720), strain.sd(), 1e-12);
  }

  @Property
  void a_band_taken_in_by_the_amount_is_worn_at_the_target_strain(
      @ForAll @DoubleRange(min = 600, max = 1200) double body,
      @ForAll @DoubleRange(min = 500, max = 1300) double garment,
      @ForAll @DoubleRange(min = 0, max = 0.4) double target) {
    Estimate takeIn = new BandFit(body, garment, 10, 3).takeInMm(target);
    BandFit after = new BandFit(body, garment - takeIn.value(), 0, 0);
    assertEquals(target, after.strain().value(), 1e-9);
  }

  @Test
  void a_band_too_short_for_its_strain_is_let_out_by_a_negative_amount() {
    Estimate takeIn = new BandFit(800, 640, 10, 3).takeInMm(0.1);
    assertEquals(640 - 800 / 1.1, takeIn.value(), 1e-9);
    assertTrue(takeIn.value() < 0);
    assertEquals(Math.hypot(3, 10 / 1.1), takeIn.sd(), 1e-9);
  }

  // The string around the Earth, drawn up at one point: one metre more on 40 000 km rises about
  // 121.5 m (a well-known puzzle; rounded).
  @Test
  void a_string_one_metre_longer_than_the_equator_is_drawn_up_a_hundred_and_twenty_metres() {
    assertEquals(1000, BandFit.pullOffSlackMm(4e10, 121_500), 5.0);
  }

  @Property
  void a_band_that_pulls_further_off_is_longer(
      @ForAll @DoubleRange(min = 600, max = 1200) double body,
      @ForAll @DoubleRange(min = 1, max = 100) double gap) {
    double slack = BandFit.pullOffSlackMm(body, gap);
    assertTrue(slack > 0);
    assertTrue(slack < 2 * gap);
    assertTrue(BandFit.pullOffSlackMm(body, gap + 1) > slack);
  }

  // Slope against a central difference (numerical analysis).
  @Test
  void the_error_of_the_gap_enters_by_its_slope() {
    double slope = (BandFit.pullOffSlackMm(800, 40.01) - BandFit.pullOffSlackMm(800, 39.99)) / 0.02;
    BandFit fit = BandFit.fromPullOff(800, 40, 0, 5);
    assertEquals(5 * slope, fit.garmentSdMm(), 1e-4);
    assertEquals(800 + BandFit.pullOffSlackMm(800, 40), fit.garmentMm(), 1e-9);
  }

  @Test
  void girths_that_cannot_be_are_refused() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new BandFit(0, 700, 1, 1))
            .getMessage()
            .contains("above zero"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new BandFit(800, 700, -1, 1))
            .getMessage()
            .contains("error"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> BandFit.pullOffSlackMm(800, -1))
            .getMessage()
            .contains("gap"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new BandFit(800, 700, 1, 1).takeInMm(-1))
            .getMessage()
            .contains("strain"));
  }
}
