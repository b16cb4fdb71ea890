package easewright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.size.LabelReading;
import easewright.size.Region;
import easewright.size.SizeLabel;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LabelReadingTest {
  // Band labels (second-hand, an encyclopaedia): EU, FR = EU + 15, IT = (EU − 60) / 5,
  // UK = 2 (EU − 60) / 5 + 28.
  @ParameterizedTest
  @CsvSource({"60, 75, 0, 28", "75, 90, 3, 34", "85, 100, 5, 38", "110, 125, 10, 48"})
  void band_numbers_of_all_regions_stand_for_the_same_underbust(int eu, int fr, int it, int uk) {
    int[] numbers = {eu, fr, it, uk, uk};
    Region[] regions = {Region.EU, Region.FR, Region.IT, Region.UK, Region.US};
    for (int i = 0; i < numbers.length; i++) {
      assertEquals(Optional.of(eu), regions[i].euBand(numbers[i]), regions[i].name());
      assertEquals(numbers[i], regions[i].number(eu), regions[i].name());
    }
  }

  @ParameterizedTest
  @CsvSource({"34 B,34,B", "75DD,75,DD", "C75,75,C", " aa 70 ,70,aa", "3,3,"})
  void a_label_is_read_whichever_comes_first(String text, int number, String letter) {
    assertEquals(List.of(new SizeLabel(number, letter)), SizeLabel.parse(text));
  }

  // Common practice: labels name the same girths as two regions do, or two cups or bands at once.
  @ParameterizedTest
  @CsvSource({
    "34DD/E, 34 DD, 34 E",
    "32DDD/F, 32 DDD, 32 F",
    "75E/34DD, 75 E, 34 DD",
    "70/75 B, 70 B, 75 B",
    "75 B / 75 C, 75 B, 75 C"
  })
  void a_label_with_a_slash_names_two_sizes(String text, String one, String other) {
    assertEquals(
        List.of(one, other), SizeLabel.parse(text).stream().map(SizeLabel::toString).toList());
  }

  @Test
  void an_italian_roman_numeral_is_a_band() {
    assertEquals(List.of(new SizeLabel(3, "B")), SizeLabel.parse("III B"));
  }

  @ParameterizedTest
  @CsvSource({"B", "34-B", "34 BBBB", "1234 B", "34 B 2", "M", "S/M", "34/", "34 B/C/D", "IIII B"})
  void what_is_no_label_is_not_read(String text) {
    assertTrue(SizeLabel.parse(text).isEmpty());
  }

  // Disputed whether the letter counts from the underbust or the number: 34 in = 86.4 cm, so for a
  // girth of 75 cm a B is a bust of 80.1 cm or of 91.4 cm.
  @Test
  void an_inch_letter_means_busts_eleven_centimetres_apart() {
    List<LabelReading> readings = LabelReading.of(List.of(new SizeLabel(34, "B")), Region.UK);
    assertEquals(750, readings.get(1).underbustMm(), 1e-9);
    assertEquals(36 * 25.4, readings.get(1).bustMm().orElseThrow(), 1e-9);
    assertEquals(750, readings.get(2).underbustMm(), 1e-9);
    assertEquals(750 + 2 * 25.4, readings.get(2).bustMm().orElseThrow(), 1e-9);
  }

  // A label printed for girths must list those girths among its possible meanings.
  @Property(tries = 100)
  void every_label_of_two_girths_can_be_read_back_to_them(
      @ForAll @DoubleRange(min = 630, max = 1000) double under,
      @ForAll @DoubleRange(min = 125, max = 225) double difference) {
    Measured underbust = new Measured(Length.ofMm(under), 1e-3);
    Measured bust = new Measured(Length.ofMm(under + difference), 1e-3);
    List<PrintedLabels.Printed> labels = PrintedLabels.of(under, under + difference);
    assertTrue(labels.size() >= 6);
    for (PrintedLabels.Printed printed : labels) {
      double probability =
          LabelReading.of(SizeLabel.parse(printed.label()), printed.region()).stream()
              .filter(reading -> reading.basis() == printed.basis())
              .mapToDouble(reading -> reading.probability(bust, underbust))
              .sum();
      // Within a micrometre of a border the odds are undefined.
      assertTrue(probability > 0.1, printed.toString());
    }
  }
}
