package easewright.cloth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ElasticTestTest {

  private final ElasticTest elastic = new ElasticTest(40, 200, 260, 6, 440.0);

  // Hooke's law by hand: 6 N on 4 cm at 30 % is 1.5 N/cm; a third of it at 10 %.
  @Test
  void tension_grows_in_proportion_to_extension() {
    assertEquals(0.3, elastic.testedExtension(), 1e-12);
    assertEquals(1.5, elastic.tensionNPerCm(0.3).value(), 1e-12);
    assertEquals(0.5, elastic.tensionNPerCm(0.1).value(), 1e-12);
  }

  // Relative error by hand: both lengths ±1 mm move an extension of 60 mm on 200 mm.
  @Test
  void the_error_of_tension_is_that_of_the_two_lengths() {
    double relative = Math.hypot(1.0 / 60, 260.0 / (60 * 200));
    assertEquals(relative, elastic.tensionNPerCm(0.2).sd(), 1e-9);
  }

  // Common practice: wear an elastic at no more than half of what it stretches.
  @Test
  void the_limit_is_half_the_stretch_and_half_the_test_when_the_end_stop_is_unknown() {
    assertEquals(0.6, elastic.limit(), 1e-12);
    assertEquals(0.15, new ElasticTest(40, 200, 260, 6, null).limit(), 1e-12);
  }

  @Test
  void the_cut_length_stretched_in_wear_is_the_girth() {
    assertEquals(670, elastic.cutLengthMm(780, 0.2, 20), 1e-9);
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> elastic.cutLengthMm(780, 0.7, 20))
            .getMessage()
            .contains("half"));
  }

  @Property
  void the_extension_at_a_tension_has_that_tension(
      @ForAll @DoubleRange(min = 0, max = 10) double tension) {
    assertEquals(tension, elastic.tensionNPerCm(elastic.extensionAt(tension)).value(), 1e-9);
  }

  @Test
  void impossible_readings_are_refused_by_name() {
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new ElasticTest(40, 200, 200, 6, null))
            .getMessage()
            .contains("weight"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new ElasticTest(0, 200, 260, 6, null))
            .getMessage()
            .contains("zero"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new ElasticTest(40, 200, 260, 6, 250.0))
            .getMessage()
            .contains("stop"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> elastic.tensionNPerCm(-0.1))
            .getMessage()
            .contains("zero or more"));
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> elastic.extensionAt(-0.1))
            .getMessage()
            .contains("zero or more"));
  }
}
