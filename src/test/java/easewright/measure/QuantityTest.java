package easewright.measure;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

// Ways of writing amounts: common practice on tapes and pattern envelopes.
class QuantityTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "34 1/4 in",
        "34¼ in",
        "34 ¼ in",
        "34-1/4\"",
        "34 - 1/4 in",
        "34–1/4″",
        "34.25 inches",
        "34,25 in.",
        "34 2/8 IN",
        "34 1⁄4 inch",
        "  34\u00a01/4\u2009in  ",
        "137/4 in",
        "34.250''"
      })
  void thirty_four_and_a_quarter_inches_written_many_ways_is_the_same(String text) {
    Quantity read = Quantity.parse(text);
    assertEquals(34.25, read.number(), 0);
    assertEquals(34.25 * 25.4, read.length().mm(), 1e-9);
    assertEquals(UnitSystem.IMPERIAL, read.system());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "86.5 cm | 865",
        "86,5 cm | 865",
        "86.5cm | 865",
        "340 mm | 340",
        "1/2 cm | 5",
        "½ cm | 5",
        ".5 cm | 5",
        "0,125 m | 125",
        "1 1/2 m | 1500",
        "86.49999999999999 cm | 865",
        "0 mm | 0"
      })
  void metric_lengths_are_read_in_millimetres(String text, double mm) {
    Quantity read = Quantity.parse(text);
    assertEquals(mm, read.length().mm(), 1e-9);
    assertEquals(UnitSystem.METRIC, read.system());
  }

  @Test
  void every_unicode_fraction_has_the_value_of_its_name() {
    String signs = "¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞";
    double[] values = {
      1 / 4., 1 / 2., 3 / 4., 1 / 3., 2 / 3., 1 / 5., 2 / 5., 3 / 5., 4 / 5., 1 / 6., 5 / 6.,
      1 / 8., 3 / 8., 5 / 8., 7 / 8.
    };
    for (int i = 0; i < values.length; i++) {
      String text = signs.charAt(i) + " in";
      assertEquals(values[i], Quantity.parse(text).number(), 1e-12, text);
    }
  }

  @Test
  void other_quantities_are_read_in_their_base_units() {
    assertAll(
        () -> assertEquals(0.75, Percent.parse("75 %").fraction(), 1e-12),
        () -> assertEquals(0.125, Percent.parse("12½%").fraction(), 1e-12),
        () -> assertEquals(2.4, LineTension.parse("2.4 N/cm").newtonsPerCm(), 1e-12),
        () -> assertEquals(2.4, LineTension.parse("240 N / m").newtonsPerCm(), 1e-12),
        () -> assertEquals(0.980665, LineTension.parse("100 gf/cm").newtonsPerCm(), 1e-12),
        () -> assertEquals(220, ArealWeight.parse("220 g/m²").gramsPerM2(), 1e-12),
        () -> assertEquals(220, ArealWeight.parse("220 gsm").gramsPerM2(), 1e-12),
        () -> assertEquals(220, ArealWeight.parse("220 g/m2").gramsPerM2(), 1e-12),
        () -> assertEquals(4.903325, Force.parse("500 g").newtons(), 1e-12),
        // 15 mmHg is 2.0 kPa: 1 mmHg = 133.322 Pa, NIST SP 811 (from memory).
        () -> assertEquals(2.0, Pressure.parse("15 mmHg").kPa(), 0.001));
  }

  @ParameterizedTest
  @ValueSource(strings = {"86.5", "34", "34 1/4", "½", "34 ."})
  void a_bare_number_is_refused_and_told_to_write_the_unit(String text) {
    BadQuantity bad = assertThrows(BadQuantity.class, () -> Quantity.parse(text));
    assertTrue(bad.problem().contains("no unit"), bad.problem());
    assertEquals("Write the unit: \"86.5 cm\" or \"34 in\".", bad.remedy());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-3 cm | negative",
        "−3 cm | negative",
        "3/0 in | over zero",
        "34 1/0 in | over zero",
        "34 5/4 in | fraction of one or more",
        "34 1/ in | unfinished fraction",
        "34. cm | decimal mark",
        "1,250 mm | thousands comma",
        "30-32 in | two numbers",
        "30 32 in | two numbers",
        "30- in | dash",
        "34.5 1/4 in | more than one number",
        "1.2.3 cm | more than one number",
        "1//2 in | unfinished fraction",
        "1/2/3 in | more than one number",
        "NaN cm | does not start with a number",
        "Infinity cm | does not start with a number",
        "cm | does not start with a number",
        "1e3 cm | not known",
        "34 hands | not known",
        "٣٤ cm | does not start with a number",
        "1234567 mm | more digits",
        "1/1234567 mm | more digits",
        "5 ft 4 in | not known"
      })
  void a_text_that_is_no_quantity_is_refused_with_the_reason(String text, String reason) {
    BadQuantity bad = assertThrows(BadQuantity.class, () -> Quantity.parse(text));
    assertTrue(bad.problem().contains(reason), bad.problem());
    assertTrue(bad.remedy().endsWith("."), bad.remedy());
  }

  @ParameterizedTest
  @NullSource
  @ValueSource(strings = {"", "   ", "\u00a0"})
  void nothing_written_is_refused(String text) {
    assertThrows(BadQuantity.class, () -> Quantity.parse(text));
  }

  @Test
  void forty_characters_are_read_and_forty_one_refused() {
    String forty = " ".repeat(34) + "8.5 cm";
    assertEquals(85, Length.parse(forty).mm(), 1e-9);
    assertThrows(BadQuantity.class, () -> Length.parse(" " + forty));
  }

  @Test
  void markup_is_not_echoed() {
    BadQuantity bad =
        assertThrows(BadQuantity.class, () -> Quantity.parse("5 <script>alert(1)</script>"));
    assertTrue(bad.getMessage().chars().noneMatch(c -> c == '<' || c == '>'), bad.getMessage());
  }

  @Test
  void a_percentage_where_a_length_belongs_is_refused_by_name() {
    BadQuantity bad = assertThrows(BadQuantity.class, () -> Length.parse("75 %"));
    assertTrue(bad.problem().contains("a percentage, where a length"), bad.problem());
  }
}
