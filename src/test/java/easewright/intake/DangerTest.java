package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.intake.Reading.SignRead;
import easewright.rulebook.UsualBook;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A danger is cleared only by plain words (common practice: when in doubt, warn). */
class DangerTest {
  private static final Intake INTAKE = new Intake(UsualBook.read());
  private static final Set<String> BREATHING =
      Set.of("breathing-feels-hard", "breathless-or-dizzy");

  private static Set<Boolean> breathing(String text) {
    return INTAKE.read(text).signs().stream()
        .filter(sign -> BREATHING.contains(sign.id()))
        .map(SignRead::present)
        .collect(Collectors.toSet());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "I can barely breathe in my bra.",
        "I can hardly breathe in this top.",
        "My band is so tight I can only just breathe.",
        "I can not breathe in this bra.",
        "I can never breathe right in this bra.",
        "I can't breathe easily in this bra."
      })
  void breathing_with_trouble_is_a_danger_and_never_cleared(String text) {
    assertEquals(Set.of(true), breathing(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "I can breathe again once my bra is off.",
        "Can you breathe in yours? My band is tight.",
        "I can breathe only in sips in this bra."
      })
  void breathing_within_limits_clears_nothing(String text) {
    assertEquals(false, breathing(text).contains(false), text);
  }

  @Test
  void breathing_plainly_well_is_cleared() {
    assertEquals(Set.of(false), breathing("My bra is snug and I can breathe fine in it."));
  }
}
