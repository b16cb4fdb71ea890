package easewright.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Classes C1 to C3 of Hopper and Turton 2001, An empirical investigation of meta-heuristic and
 * heuristic algorithms for a 2D packing problem, European Journal of Operational Research 128:34.
 * All were cut from a rectangle without waste, so the optimal height is that rectangle's height.
 * Taken from the public test files of a packing program; every area was checked against width times
 * height.
 */
@Tag("long")
class HopperTurtonTest {
  private static final String C1_1 =
      "2 12 7 12 8 6 3 6 3 5 5 5 3 12 3 7 5 7 2 6 3 2 4 2 3 4 4 4 9 2 11 2";
  private static final String C1_2 =
      "4 1 4 5 9 4 3 5 3 9 1 4 5 3 4 1 5 5 7 2 9 3 3 13 2 8 15 4 5 4 10 6 7 2";
  private static final String C1_3 =
      "4 14 5 2 2 2 9 7 5 5 2 5 7 7 3 5 6 5 3 2 6 2 4 6 6 3 10 3 6 3 10 3";
  private static final String C2_1 =
      "11 3 13 3 9 2 7 2 9 3 7 3 11 2 13 2 11 4 13 4 3 5 11 2 2 2 11 3 2 3 5 4 6 4 12 2 1 2 3 5"
          + " 13 5 12 4 1 4 5 2 6 2";
  private static final String C2_2 =
      "11 2 2 3 10 7 8 4 9 5 7 2 4 1 6 1 4 5 8 3 1 3 5 5 3 1 12 4 6 2 2 4 11 4 10 2 3 2 11 2 3 4"
          + " 26 4 8 4 3 2 6 2";
  private static final String C2_3 =
      "12 7 7 7 7 1 5 1 3 2 6 2 7 2 5 2 3 1 6 1 12 6 9 6 12 2 7 2 10 3 4 1 5 1 16 3 5 3 4 2 5 2"
          + " 10 3 9 3 16 3 5 3";
  private static final String C3_1 =
      "7 5 14 5 14 8 4 8 21 13 7 11 14 11 14 5 4 5 18 3 21 3 17 11 4 11 7 4 5 4 6 7 18 5 3 5 7 3"
          + " 5 3 18 4 3 4 12 2 6 2 18 5 21 5 17 3 4 3";
  private static final String C3_2 =
      "18 6 12 2 7 10 23 4 1 4 7 7 4 11 5 6 7 2 11 6 19 10 5 11 2 4 5 7 2 4 12 7 13 7 6 3 10 6"
          + " 16 9 4 1 10 4 24 6 9 9 1 2 5 8 5 3 25 7 21 5";
  private static final String C3_3 =
      "24 9 8 9 11 9 17 9 24 4 8 4 6 1 5 1 17 4 6 3 5 3 5 12 13 12 14 14 14 2 2 2 3 8 9 8 14 12"
          + " 2 12 3 6 9 6 5 2 13 2 18 3 14 3 16 3 12 3";

  private static List<LaidPart> parts(String sizes, boolean turnable) {
    String[] numbers = sizes.split(" ");
    List<LaidPart> parts = new ArrayList<>();
    for (int i = 0; i < numbers.length; i += 2) {
      parts.add(
          new LaidPart(
              "r" + i / 2,
              Double.parseDouble(numbers[i]),
              Double.parseDouble(numbers[i + 1]),
              turnable,
              false));
    }
    return parts;
  }

  @ParameterizedTest
  @CsvSource({
    "C1_1, 16, 20, 20, " + C1_1,
    "C1_2, 17, 20, 20, " + C1_2,
    "C1_3, 16, 20, 20, " + C1_3,
    "C2_1, 25, 40, 15, " + C2_1,
    "C2_2, 25, 40, 15, " + C2_2,
    "C2_3, 25, 40, 15, " + C2_3,
    "C3_1, 28, 60, 30, " + C3_1,
    "C3_2, 29, 60, 30, " + C3_2,
    "C3_3, 28, 60, 30, " + C3_3
  })
  void a_published_instance_is_laid_within_five_percent_of_its_known_optimum(
      String name, int count, double width, double optimum, String sizes) {
    for (boolean turnable : List.of(false, true)) {
      List<LaidPart> parts = parts(sizes, turnable);
      assertEquals(count, parts.size());
      assertEquals(width * optimum, parts.stream().mapToDouble(LaidPart::area).sum());
      long began = System.nanoTime();
      Layout layout = new Packing(100_000, 1).lay(width, parts);
      // Reported, not asserted: it depends on the machine.
      System.out.printf(
          "%s %s: length %.0f, optimum %.0f, %d ms%n",
          name,
          turnable ? "turnable" : "upright",
          layout.length(),
          optimum,
          (System.nanoTime() - began) / 1_000_000);
      LayoutChecks.assertSound(layout, parts);
      assertTrue(layout.length() <= 1.05 * optimum, () -> name + ": " + layout.length());
    }
  }
}
