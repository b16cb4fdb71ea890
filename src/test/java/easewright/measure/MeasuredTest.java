package easewright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MeasuredTest {

  // ±1 cm and ±2 cm on a girth from memory of practice; 9 mm and 4 mm ISO 20685 as quoted in Gupta
  // and Zakaria (eds), Anthropometry, Apparel Sizing and Design, p. 41.
  @ParameterizedTest
  @CsvSource({"TAPE_TRAINED, 10", "TAPE_SELF, 20", "EXPERT_TAPE, 9"})
  void ninety_five_percent_of_girths_fall_within_the_stated_limit(
      MeasuringMethod method, double limitMm) {
    NormalDistribution error = new NormalDistribution(0, method.girthSdMm());
    assertEquals(0.95, error.probability(-limitMm, limitMm), 0.0005);
  }

  @Test
  void an_experts_breadth_is_within_four_millimetres_at_95_percent() {
    NormalDistribution error = new NormalDistribution(0, MeasuringMethod.EXPERT_TAPE.shortSdMm());
    assertEquals(0.95, error.probability(-4, 4), 0.0005);
  }

  @ParameterizedTest
  @EnumSource
  void a_method_is_found_by_its_wire_name_and_errs_less_on_short_lengths(MeasuringMethod method) {
    assertEquals(method, MeasuringMethod.named(method.wireName()).orElseThrow());
    assertEquals(method.name(), method.wireName().toUpperCase().replace('-', '_'));
    assertEquals(1, Double.compare(method.girthSdMm(), method.shortSdMm()));
  }

  @Test
  void a_measurement_as_written_keeps_its_unit_and_takes_the_methods_error() {
    Measured bust = Measured.of(Quantity.parse("34 1/4 in"), MeasuringMethod.TAPE_SELF.girthSdMm());
    assertEquals("34 1/4 in", bust.text());
    assertEquals(UnitSystem.IMPERIAL, bust.system());
    assertEquals(20 / 1.96, bust.sdMm(), 1e-9);
    Measured width = Measured.of(Quantity.parse("18 cm"), MeasuringMethod.EXPERT_TAPE.shortSdMm());
    assertEquals(4 / 1.96, width.sdMm(), 1e-9);
  }

  // Inverse-variance weighting: Bevington and Robinson, Data Reduction and Error Analysis, ch. 4
  // (from memory). Weights 1/9 and 1/16 for SDs 3 and 4: mean (900/9 + 925/16)/(25/144), SD 2.4.
  @Test
  void two_measurings_combine_by_inverse_variance() {
    Measured both =
        Measured.combined(
            List.of(new Measured(Length.ofMm(900), 3), new Measured(Length.ofMm(925), 4)));
    assertEquals(909, both.value().mm(), 1e-9);
    assertEquals(2.4, both.sdMm(), 1e-9);
  }

  @Test
  void four_equal_measurings_halve_the_error() {
    Measured one = new Measured(Length.ofMm(900), 10);
    assertEquals(5, Measured.combined(List.of(one, one, one, one)).sdMm(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> Measured.combined(List.of()));
  }

  // Errors of independent readings add in quadrature: same textbook, ch. 3 (from memory); 3, 4, 5.
  @Test
  void the_error_of_a_difference_is_the_root_of_the_sum_of_squares() {
    Measured bust = new Measured(Length.ofMm(1070), 3);
    Measured underbust = new Measured(Length.ofMm(870), 4);
    assertEquals(200, bust.differenceMm(underbust), 1e-9);
    assertEquals(5, bust.differenceSdMm(underbust), 1e-9);
  }

  @Test
  void a_measurement_without_error_or_below_zero_or_in_percent_is_refused() {
    Length length = Length.ofMm(900);
    assertThrows(IllegalArgumentException.class, () -> new Measured(length, 0));
    assertThrows(IllegalArgumentException.class, () -> new Measured(length, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new Measured(Length.ofMm(-1), 1));
    assertThrows(IllegalArgumentException.class, () -> new Measured(length, 1, Unit.PERCENT));
  }
}
