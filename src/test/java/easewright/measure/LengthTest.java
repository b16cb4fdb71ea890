package easewright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LengthTest {

  // A tape shows 1 mm or 1/8 in: common practice.
  @ParameterizedTest
  @CsvSource({
    "865,     86.5 cm, 34 in",
    "869.95,  87.0 cm, 34 1/4 in",
    "9.525,   10 mm,   3/8 in",
    "12.4,    12 mm,   1/2 in",
    "0,       0 mm,    0 in",
    "1.5,     2 mm,    0 in",
    "99.4,    99 mm,   3 7/8 in",
    "99.5,    10.0 cm, 3 7/8 in",
    "100,     10.0 cm, 3 7/8 in",
    "863.6,   86.4 cm, 34 in",
    "-9.525,  -10 mm,  -3/8 in",
    "-0.4,    0 mm,    0 in",
  })
  void a_length_is_written_as_a_tape_shows_it(double mm, String metric, String imperial) {
    assertEquals(metric, Length.ofMm(mm).text(UnitSystem.METRIC));
    assertEquals(imperial, Length.ofMm(mm).text(UnitSystem.IMPERIAL));
  }

  @Test
  void a_decimal_point_stays_a_point_in_a_comma_locale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertEquals("86.5 cm", Length.ofCm(86.5).text(UnitSystem.METRIC));
      assertEquals("12.5 %", Percent.of(12.5).text());
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void lengths_add_subtract_and_scale() {
    Length bust = Length.ofCm(107);
    Length underbust = Length.ofCm(87);
    assertEquals(200, bust.minus(underbust).mm(), 1e-9);
    assertEquals(1070, underbust.plus(Length.ofMm(200)).mm(), 1e-9);
    assertEquals(435, underbust.times(0.5).mm(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void a_length_that_is_no_number_is_refused(double mm) {
    assertThrows(IllegalArgumentException.class, () -> Length.ofMm(mm));
  }

  @Test
  void a_negative_force_tension_weight_or_pressure_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> new Force(-1));
    assertThrows(IllegalArgumentException.class, () -> new LineTension(-1));
    assertThrows(IllegalArgumentException.class, () -> new ArealWeight(-1));
    assertThrows(IllegalArgumentException.class, () -> new Pressure(-1));
  }

  // 7.50 mmHg = 1 kPa and 6.49 oz/yd² = 220 g/m²: NIST SP 811 factors (from memory), rounded.
  @Test
  void other_quantities_are_written_in_the_askers_units() {
    assertEquals("2.4 N/cm", new LineTension(2.4).text(UnitSystem.METRIC));
    assertEquals("1.37 lbf/in", new LineTension(2.4).text(UnitSystem.IMPERIAL));
    assertEquals("220 g/m²", new ArealWeight(220).text(UnitSystem.METRIC));
    assertEquals("6.5 oz/yd²", new ArealWeight(220).text(UnitSystem.IMPERIAL));
    assertEquals("2.5 kPa", new Pressure(2.5).text(UnitSystem.METRIC));
    assertEquals("19 mmHg", new Pressure(2.5).text(UnitSystem.IMPERIAL));
    assertEquals("4.9 N", Force.parse("500 gf").text(UnitSystem.METRIC));
    assertEquals("1.1 lbf", Force.parse("500 gf").text(UnitSystem.IMPERIAL));
  }
}
