package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import easewright.measure.Length;
import easewright.measure.Measured;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SizeSystemTest {

  // EN 13402-3 and JIS L 4006, steps from an encyclopaedia.
  @Test
  void a_difference_of_fifteen_centimetres_is_b_in_en_and_c_in_jis() {
    assertEquals("B", size(SizeSystem.EN, 75, 90).cup());
    assertEquals("C", size(SizeSystem.JIS, 75, 90).cup());
    assertEquals("C75", size(SizeSystem.JIS, 75, 90).label());
  }

  // JIS L 4006: cups at 5, 7.5, 10 … 30 cm, nominal bust = band + step ±1.25 cm (computed).
  @ParameterizedTest
  @CsvSource({
    "AAA, 5", "AA, 7.5", "A, 10", "B, 12.5", "C, 15", "D, 17.5", "E, 20", "F, 22.5", "G, 25",
    "H, 27.5", "I, 30"
  })
  void a_jis_cup_reaches_one_and_a_quarter_centimetres_either_way(String cup, double step) {
    assertEquals(cup, size(SizeSystem.JIS, 75, 75 + step).cup());
    assertEquals(cup, size(SizeSystem.JIS, 75, 75 + step - 1.24).cup());
    assertEquals(cup, size(SizeSystem.JIS, 75, 75 + step + 1.25).cup());
    Range bust = new Designation(SizeSystem.JIS, 75, cup).nominalBust();
    assertEquals(750 + step * 10 - 12.5, bust.loMm(), 1e-9);
    assertEquals(750 + step * 10 + 12.5, bust.hiMm(), 1e-9);
  }

  // KS K 9404 example, same steps as JIS: underbust 73, bust 85.5 is 75 B (encyclopaedia).
  @Test
  void the_korean_example_comes_out_with_the_japanese_steps() {
    Designation size = size(SizeSystem.JIS, 73, 85.5);
    assertEquals(75, size.band());
    assertEquals("B", size.cup());
  }

  // One inch of difference per letter; 34 in over 30 in is a 30 D with sister 32 C: common
  // practice.
  @ParameterizedTest
  @CsvSource({"UK", "US"})
  void thirty_four_inches_over_thirty_is_a_30_d_and_its_sister_a_32_c(SizeSystem system) {
    Designation size = inches(system, 30, 34);
    assertEquals("30 D", size.label());
    assertEquals("32 C", size.sister(1).orElseThrow().label());
    assertEquals("34 B", size.sister(2).orElseThrow().label());
    assertEquals("36 A", size.sister(3).orElseThrow().label());
  }

  // Letters by inches, British / United States: encyclopaedia.
  @ParameterizedTest
  @CsvSource({
    "1, A, A",
    "2, B, B",
    "3, C, C",
    "4, D, D",
    "5, DD, DD",
    "6, E, DDD",
    "7, F, G",
    "8, FF, H",
    "9, G, I",
    "10, GG, J",
    "11, H, K",
    "12, HH, L"
  })
  void each_inch_is_one_letter_of_the_sequence(int inches, String uk, String us) {
    assertEquals(uk, inches(SizeSystem.UK, 32, 32 + inches).cup());
    assertEquals(us, inches(SizeSystem.US, 32, 32 + inches).cup());
  }

  // Even-inch bands on the measured underbust; an odd inch is a tie, rounded down as documented.
  @ParameterizedTest
  @CsvSource({"29.1, 30", "30, 30", "31, 30", "31.1, 32", "32.9, 32"})
  void an_inch_band_is_the_nearest_even_number(double underbust, int band) {
    assertEquals(band, inches(SizeSystem.UK, underbust, underbust + 3).band());
  }

  @Property
  void the_most_probable_size_of_a_near_exact_measurement_is_the_designation(
      @ForAll SizeSystem system,
      @ForAll @IntRange(min = 600, max = 1200) int underbustMm,
      @ForAll @IntRange(min = 30, max = 350) int differenceMm) {
    // An offset of a tenth of a millimetre avoids every class edge in whole mm.
    Length underbust = Length.ofMm(underbustMm + 0.13);
    Length bust = underbust.plus(Length.ofMm(differenceMm + 0.17));
    String direct = system.of(underbust, bust).map(Designation::label).orElse("outside");
    SizeEstimate chances =
        system.chart().estimate(new Measured(bust, 0.003), new Measured(underbust, 0.003));
    String best =
        chances
            .best()
            .filter(chance -> chance.probability() > 0.5)
            .map(chance -> chance.cell().id())
            .orElse("outside");
    assertEquals(direct, best);
  }

  @Test
  void a_band_or_letter_the_system_does_not_have_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> new Designation(SizeSystem.EN, 72, "B"));
    assertThrows(IllegalArgumentException.class, () -> new Designation(SizeSystem.EN, 75, "DD"));
    assertThrows(IllegalArgumentException.class, () -> new Designation(SizeSystem.UK, 31, "B"));
  }

  private static Designation size(SizeSystem system, double underbustCm, double bustCm) {
    return system.of(Length.ofCm(underbustCm), Length.ofCm(bustCm)).orElseThrow();
  }

  private static Designation inches(SizeSystem system, double underbust, double bust) {
    return system.of(Length.ofInches(underbust), Length.ofInches(bust)).orElseThrow();
  }
}
