package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShareTest {

  /** Newcombe 1998, Statistics in Medicine 17:857, table I, method 3 (values from memory). */
  @ParameterizedTest
  @CsvSource({
    "81, 263, 0.2553, 0.3662",
    "15, 148, 0.0624, 0.1605",
    "0, 20, 0, 0.1611",
    "1, 29, 0.0061, 0.1718"
  })
  void the_interval_is_that_of_published_examples(int part, int whole, double from, double to) {
    Share share = new Share(part, whole);
    assertEquals(from, share.from(), 5e-5);
    assertEquals(to, share.to(), 5e-5);
  }

  @Test
  void below_five_cases_there_are_too_few_to_tell() {
    assertTrue(new Share(4, 4).tooFew());
    assertFalse(new Share(0, 5).tooFew());
    assertThrows(IllegalArgumentException.class, () -> new Share(3, 2));
  }
}
