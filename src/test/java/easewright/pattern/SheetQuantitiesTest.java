package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import easewright.measure.BadQuantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SheetQuantitiesTest {

  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  @ParameterizedTest
  @CsvSource({
    "300 mm, 300",
    "86.5 cm, 865",
    "3/8 in, 9.525",
    "34 1/4 in, 869.95",
    "2 in, 50.8",
  })
  void aLengthWithItsUnitIsReadInMillimetres(String text, double mm) {
    assertEquals(mm, SheetQuantities.mm(text), 1e-9);
    assertEquals(-mm, SheetQuantities.signedMm("-" + text), 1e-9);
  }

  @Test
  void a_percentage_is_a_fraction_and_a_weight_is_per_square_metre() {
    assertEquals(0.75, SheetQuantities.fraction("75 %"), 1e-12);
    assertEquals(220, SheetQuantities.gsm("220 g/m2"), 1e-12);
    assertEquals(220, SheetQuantities.gsm("220 g/m²"), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(strings = {"300", "mm", "75 %", "-3 mm", "1/0 in", "3 furlong", "", "1 2 in"})
  void what_is_no_length_is_refused(String text) {
    assertThrows(BadQuantity.class, () -> SheetQuantities.mm(text));
  }

  @Test
  void quantities_of_another_kind_are_refused() {
    assertThrows(BadQuantity.class, () -> SheetQuantities.fraction("75 mm"));
    assertThrows(BadQuantity.class, () -> SheetQuantities.gsm("75 %"));
  }
}
