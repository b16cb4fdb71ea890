package easewright.size;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.measure.Length;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often a letter or a band from a tape measurement is correct. */
class LetterOddsTest {
  private static final int TRIES = 60_000;

  /**
   * The closed form for a class of width w, an error SD and a true value anywhere in the class,
   * with z = w/SD: P = 2Φ(z) − 1 − (2/z)(φ(0) − φ(z)) (computed).
   */
  private static double right(double widthMm, double sdMm) {
    NormalDistribution standard = new NormalDistribution(0, 1);
    double z = widthMm / sdMm;
    return 2 * standard.cumulativeProbability(z)
        - 1
        - 2 / z * (standard.density(0) - standard.density(z));
  }

  // Percentages computed from the closed form; EN 13402-3 cups of 2 cm, JIS L 4006 cups of 2.5 cm.
  @ParameterizedTest
  @CsvSource({
    "EN, 20, 5, 80", "EN, 20, 7, 72", "EN, 20, 10, 61", "EN, 20, 14, 49",
    "JIS, 25, 5, 84", "JIS, 25, 7, 78", "JIS, 25, 10, 68", "JIS, 25, 14, 57"
  })
  void a_cup_letter_is_right_as_often_as_the_error_allows(
      SizeSystem system, double width, double sd, int percent) {
    SplittableRandom random = new SplittableRandom(20);
    String cup = "C";
    Range range = system.differenceRange(cup);
    int right = 0;
    for (int i = 0; i < TRIES; i++) {
      double truth = range.loMm() + width * random.nextDouble();
      right += cup.equals(letter(system, truth + sd * random.nextGaussian())) ? 1 : 0;
    }
    assertEquals(percent, 100 * right(width, sd), 0.6);
    assertEquals(100 * right(width, sd), 100.0 * right / TRIES, 0.8);
  }

  private static String letter(SizeSystem system, double differenceMm) {
    Length underbust = Length.ofMm(750);
    return system
        .of(underbust, underbust.plus(Length.ofMm(differenceMm)))
        .map(Designation::cup)
        .orElse(null);
  }

  // The same closed form for bands of 5 cm.
  @ParameterizedTest
  @CsvSource({"5, 92", "7, 89", "10, 84", "14, 78"})
  void a_band_is_right_as_often_as_the_error_allows(double sd, int percent) {
    SplittableRandom random = new SplittableRandom(21);
    int right = 0;
    for (int i = 0; i < TRIES; i++) {
      double read = 725 + 50 * random.nextDouble() + sd * random.nextGaussian();
      Optional<Designation> size = SizeSystem.EN.of(Length.ofMm(read), Length.ofMm(read + 150));
      right += size.filter(found -> found.band() == 75).isPresent() ? 1 : 0;
    }
    assertEquals(percent, 100 * right(50, sd), 0.6);
    assertEquals(100 * right(50, sd), 100.0 * right / TRIES, 0.8);
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
