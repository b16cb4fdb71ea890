package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.Reading.SignRead;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Which piece is said to be fine (common practice in reading posts). */
class FineTest {
  private static Set<String> denied(String text) {
    return Reader.read(text).signs().stream()
        .filter(sign -> !sign.present())
        .map(SignRead::id)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void a_piece_told_of_in_a_complaint_is_not_fine_because_the_next_is() {
    assertEquals(
        Set.of("straps-slip-off", "straps-dig-in"),
        denied("It still rides up about 3 cm at the back, the straps are fine."));
  }

  @Test
  void pieces_listed_before_fine_are_all_fine() {
    assertEquals(
        Set.of("straps-slip-off", "straps-dig-in", "horizontal-folds-across-the-back"),
        denied("The neckline gapes. The back, the straps are fine."));
  }
}
