package easewright.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class QuantityPropertiesTest {

  @Property
  void an_inch_text_reads_back_within_half_an_eighth(@ForAll @DoubleRange(max = 3000) double mm) {
    Length length = Length.ofMm(mm);
    Length back = Length.parse(length.text(UnitSystem.IMPERIAL));
    assertEquals(mm, back.mm(), 25.4 / 16 + 1e-9);
    assertEquals(length.text(UnitSystem.IMPERIAL), back.text(UnitSystem.IMPERIAL));
  }

  @Property
  void a_metric_text_reads_back_within_half_a_millimetre(
      @ForAll @DoubleRange(max = 3000) double mm) {
    Length length = Length.ofMm(mm);
    Length back = Length.parse(length.text(UnitSystem.METRIC));
    assertEquals(mm, back.mm(), 0.5 + 1e-9);
    assertEquals(length.text(UnitSystem.METRIC), back.text(UnitSystem.METRIC));
  }

  @Property
  void a_mixed_number_has_the_value_of_its_parts(
      @ForAll @IntRange(max = 999) int whole,
      @ForAll @IntRange(max = 99) int top,
      @ForAll @IntRange(min = 100, max = 999) int bottom) {
    Quantity read = Quantity.parse(whole + " " + top + "/" + bottom + " in");
    assertEquals(whole + (double) top / bottom, read.number(), 1e-9);
  }

  @Property
  void cloth_and_force_texts_read_back_as_shown(
      @ForAll @DoubleRange(max = 900) double number, @ForAll UnitSystem system) {
    String weight = new ArealWeight(number).text(system);
    assertEquals(weight, ArealWeight.parse(weight).text(system));
    String tension = new LineTension(number).text(system);
    assertEquals(tension, LineTension.parse(tension).text(system));
    String force = new Force(number).text(system);
    assertEquals(force, Force.parse(force).text(system));
    String percent = new Percent(number / 100).text();
    assertEquals(percent, Percent.parse(percent).text());
  }

  @Property
  void a_quantity_in_plain_letters_reads_back_as_itself(
      @ForAll @IntRange(max = 9999) int whole,
      @ForAll @IntRange(max = 63) int top,
      @ForAll @IntRange(min = 64, max = 97) int bottom,
      @ForAll Unit unit) {
    Quantity read = Quantity.parse(whole + " " + top + "/" + bottom + " " + unit.symbol());
    assertEquals(read, Quantity.parse(read.text()));
  }

  @Property(tries = 5000)
  void garbage_is_a_quantity_or_a_bad_quantity_and_nothing_else(@ForAll("garbage") String text) {
    try {
      Quantity read = Quantity.parse(text);
      assertTrue(read.number() >= 0 && read.number() < 2e6);
    } catch (BadQuantity bad) {
      assertTrue(bad.problem().length() < 100 && bad.problem().endsWith("."), bad.problem());
      assertTrue(!bad.remedy().isBlank());
    }
  }

  @Provide
  Arbitrary<String> garbage() {
    Arbitrary<String> nearly =
        Arbitraries.strings()
            .withChars("0123456789 .,/-–¼½⅟²⁄'\"″%incmNgydkPaeE+<")
            .ofMaxLength(42);
    return Arbitraries.oneOf(Arbitraries.strings().ofMaxLength(60), nearly);
  }
}
