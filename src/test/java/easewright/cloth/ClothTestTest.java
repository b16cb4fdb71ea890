package easewright.cloth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClothTestTest {

  // Armstrong, Patternmaking for Fashion Design, ch. 27 (from memory): what 5 in stretches to.
  @ParameterizedTest
  @CsvSource({
    "5.75, BELOW_STABLE",
    "5.875, STABLE",
    "6.25, MODERATE",
    "7.5, STRETCHY",
    "8.75, STRETCHY",
    "10, SUPER_STRETCH",
    "10.125, RIB"
  })
  void fiveInchesStretchedToAHandbookMarkAreOfItsClass(double inches, StretchClass expected) {
    StretchTest around = new StretchTest(5 * 25.4, inches * 25.4, null);
    assertEquals(expected, new ClothTest(around, null).stretchClass());
  }

  @Test
  void a_cloth_that_stretches_more_up_and_down_runs_along() {
    ClothTest test =
        new ClothTest(new StretchTest(100, 140, null), new StretchTest(100, 170, null));
    assertEquals(Optional.of(ClothTest.Greatest.ALONG), test.greatest());
    assertEquals(StretchClass.STRETCHY, test.stretchClass());
  }

  @Test
  void two_readings_within_their_error_do_not_name_a_direction() {
    ClothTest test =
        new ClothTest(new StretchTest(100, 150, null), new StretchTest(100, 152, null));
    assertEquals(Optional.of(ClothTest.Greatest.EITHER), test.greatest());
    assertTrue(new ClothTest(new StretchTest(100, 150, null), null).greatest().isEmpty());
  }

  @Test
  void recovery_is_the_poorer_of_the_directions_read() {
    StretchTest good = new StretchTest(100, 150, 101.0);
    StretchTest poor = new StretchTest(100, 150, 110.0);
    StretchTest unread = new StretchTest(100, 150, null);
    assertEquals(poor.recovery(), new ClothTest(good, poor).recovery());
    assertEquals(good.recovery(), new ClothTest(good, unread).recovery());
    assertEquals(Optional.empty(), new ClothTest(unread, null).recovery());
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> new ClothTest(null, good))
            .getMessage()
            .contains("around"));
  }
}
