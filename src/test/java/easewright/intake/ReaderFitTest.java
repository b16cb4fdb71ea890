package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The programs that fit the reader's numbers. */
class ReaderFitTest {
  @Test
  void only_the_numbers_named_change() throws IOException {
    String json =
        "{\"phrases\": {\"small\": [\"bias\"],\n  \"bias\": 0.75, \"model\": -1e-2}, \"bias\": 3}";
    assertEquals(
        "{\"phrases\": {\"small\": [\"bias\"],\n  \"bias\": 0.50, \"model\": 1.25}, \"bias\": 3}",
        ReaderFit.with(json, "phrases", Map.of("bias", 0.5, "model", 1.25)));
    assertThrows(
        IllegalArgumentException.class,
        () -> ReaderFit.with(json, "phrases", Map.of("otherwise", 1.0)));
  }

  @Test
  void posts_kept_aside_are_not_fitted_on() {
    String[] aside = {"nowhere", "posts-strangers/e1,posts-strangers-aside/e2", ""};
    assertThrows(IllegalArgumentException.class, () -> ReaderFit.main(aside));
  }

  /** Drawn with known weights; within what so many examples can tell. */
  @Test
  void the_fit_finds_the_weights_that_examples_were_drawn_with() {
    Random random = new Random(7);
    LogisticFit fit = new LogisticFit();
    for (int i = 0; i < 20_000; i++) {
      double one = random.nextGaussian();
      double two = random.nextGaussian();
      double odds = 0.75 + 0.65 * one + 0.43 * two;
      fit.add(random.nextDouble() < 1 / (1 + Math.exp(-odds)), 1, one, two);
    }
    assertArrayEquals(new double[] {0.75, 0.65, 0.43}, fit.weights(), 0.06);
  }
}
