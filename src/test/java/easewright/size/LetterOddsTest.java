package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LetterOddsTest {

  // Computed table: EN cup 2 cm, JIS cup 2.5 cm, band 5 cm, errors of 5 to 14 mm.
  @ParameterizedTest
  @CsvSource({
    "20, 5, 80", "20, 7, 72", "20, 10, 61", "20, 14, 49",
    "25, 5, 84", "25, 7, 78", "25, 10, 68", "25, 14, 57",
    "50, 5, 92", "50, 7, 89", "50, 10, 84", "50, 14, 78"
  })
  void a_class_is_right_as_often_as_the_table_says(double width, double sd, int percent) {
    assertEquals(percent, 100 * LetterOdds.right(width, sd), 0.6);
  }

  @Test
  void simulated_readings_of_bodies_anywhere_in_a_class_agree() {
    SplittableRandom random = new SplittableRandom(20);
    int right = 0;
    int tries = 200_000;
    for (int i = 0; i < tries; i++) {
      double read = random.nextDouble() * 20 + random.nextGaussian() * 10;
      right += read > 0 && read <= 20 ? 1 : 0;
    }
    assertEquals((double) right / tries, LetterOdds.right(20, 10), 0.005);
  }

  @Test
  void a_hopeless_tape_is_right_by_width_over_spread_and_never_negative() {
    assertEquals(0.0003989, LetterOdds.right(1, 1000), 1e-6);
    assertEquals(0.00003989, LetterOdds.right(1, 10_000), 1e-8);
    assertThrows(IllegalArgumentException.class, () -> LetterOdds.right(0, 1));
    assertThrows(IllegalArgumentException.class, () -> LetterOdds.right(1, 0));
  }

  // Against the Apache Commons Math library.
  @Property(tries = 3000)
  void the_normal_distribution_agrees_with_a_general_library(
      @ForAll @DoubleRange(min = -12, max = 12) double x) {
    NormalDistribution standard = new NormalDistribution(0, 1);
    assertEquals(standard.cumulativeProbability(x), Normal.below(x), 1e-14);
    assertEquals(standard.density(x), Normal.density(x), 1e-15);
  }
}
