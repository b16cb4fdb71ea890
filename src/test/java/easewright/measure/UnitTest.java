package easewright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitTest {

  // International yard and pound agreement, 1959: 1 yd = 0.9144 m exactly.
  @Test
  void an_inch_is_exactly_25_point_4_millimetres() {
    assertEquals(25.4, Length.parse("1 in").mm(), 0);
    assertEquals(914.4, Length.parse("1 yd").mm(), 0);
    assertEquals(304.8, Length.parse("1 ft").mm(), 0);
    assertEquals(254.0, Length.ofInches(10).mm(), 0);
  }

  // NIST Special Publication 811 (2008), appendix B.8, factors to seven digits (from memory).
  @ParameterizedTest
  @CsvSource({
    "OUNCE_PER_YD2,        33.90575",
    "POUND_FORCE,          4.448222",
    "OUNCE_FORCE,          0.2780139",
    "KILOGRAM_FORCE,       9.80665",
    "MMHG,                 0.1333224",
    "POUND_FORCE_PER_INCH, 1.751268",
  })
  void a_factor_agrees_with_the_handbook(Unit unit, double factor) {
    assertEquals(factor, unit.factor(), factor * 5e-7);
  }

  @ParameterizedTest
  @EnumSource
  void a_unit_reads_its_own_symbol(Unit unit) {
    assertEquals(unit, Unit.named(unit.symbol()).orElseThrow());
    assertEquals(unit, Quantity.parse("1 " + unit.symbol()).unit());
  }
}
