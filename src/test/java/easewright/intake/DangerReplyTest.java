package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import easewright.intake.Reading.SignRead;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Replies to a question on a danger; doubt is never a no (common practice: when in doubt, warn).
 */
class DangerReplyTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);
  private static final SignEntry NUMB = BOOK.catalog().signs().get("numb-or-tingling-arm-or-hand");

  private static List<Boolean> read(String reply) {
    return INTAKE.read(reply, NUMB, Optional.empty()).signs().stream()
        .filter(sign -> sign.id().equals(NUMB.id()))
        .map(SignRead::present)
        .toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "y",
        "Yes",
        "now and then",
        "it did yesterday",
        "unfortunately",
        "no... well, yes, a little",
        "No. Sometimes.",
        "It does. No idea why.",
        "not any more",
        "I don't think so, maybe a bit"
      })
  void a_danger_owned_to_in_any_way_is_there(String reply) {
    assertEquals(List.of(true), read(reply));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no",
        "n",
        "Nope, not at all.",
        "No, I did not.",
        "no, my hands are fine",
        "never"
      })
  void a_plain_no_clears_it(String reply) {
    assertEquals(List.of(false), read(reply));
  }

  @ParameterizedTest
  @ValueSource(strings = {"hmm", "not really", "I don't think so", "don't know", "hopefully not"})
  void a_doubtful_reply_is_for_a_person_to_read(String reply) {
    assertEquals(List.of(), read(reply));
    assertFalse(INTAKE.read(reply, NUMB, Optional.empty()).readYourself().isEmpty());
  }
}
