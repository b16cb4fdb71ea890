package easewright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.measure.Length;
import easewright.measure.Measured;
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
  // UK = 2 (EU − 60) / 5 + 28, AU = UK − 24.
  @ParameterizedTest
  @CsvSource({
    "60, 75, 0, 28, 4",
    "75, 90, 3, 34, 10",
    "85, 100, 5, 38, 14",
    "110, 125, 10, 48, 24"
  })
  void band_numbers_of_all_regions_stand_for_the_same_underbust(
      int eu, int fr, int it, int uk, int au) {
    int[] numbers = {eu, fr, it, uk, uk, au};
    Region[] regions = {Region.EU, Region.FR, Region.IT, Region.UK, Region.US, Region.AU};
    for (int i = 0; i < numbers.length; i++) {
      assertEquals(Optional.of(eu), regions[i].euBand(numbers[i]), regions[i].name());
      assertEquals(numbers[i], regions[i].number(eu), regions[i].name());
    }
  }

  @ParameterizedTest
  @CsvSource({"34 B,34,B", "75DD,75,DD", "C75,75,C", " aa 70 ,70,aa", "3,3,"})
  void a_label_is_read_whichever_comes_first(String text, int number, String letter) {
    assertEquals(new SizeLabel(number, letter), SizeLabel.parse(text).orElseThrow());
  }

  @ParameterizedTest
  @CsvSource({"B", "34-B", "34 BBBB", "1234 B", "34 B 2"})
  void what_is_no_label_is_not_read(String text) {
    assertTrue(SizeLabel.parse(text).isEmpty());
  }

  // Disputed whether the letter counts from the underbust or the number: 34 in = 86.4 cm, so for a
  // girth of 75 cm a B is a bust of 80.1 cm or of 91.4 cm.
  @Test
  void an_inch_letter_means_busts_eleven_centimetres_apart() {
    List<LabelReading> readings = LabelReading.of(new SizeLabel(34, "B"), Region.UK);
    assertEquals(750, readings.get(1).underbustMm(), 1e-9);
    assertEquals(750 + 2 * 25.4, readings.get(1).bustMm().orElseThrow(), 1e-9);
    assertEquals(750, readings.get(2).underbustMm(), 1e-9);
    assertEquals(36 * 25.4, readings.get(2).bustMm().orElseThrow(), 1e-9);
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
          LabelReading.of(SizeLabel.parse(printed.label()).orElseThrow(), printed.region()).stream()
              .filter(reading -> reading.basis() == printed.basis())
              .mapToDouble(reading -> reading.probability(bust, underbust))
              .sum();
      // Within a micrometre of a border the odds are undefined.
      assertTrue(probability > 0.1, printed.toString());
    }
  }
}
