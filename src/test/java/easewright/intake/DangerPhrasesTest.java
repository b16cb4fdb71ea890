package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A saying that two signs share tells neither, so dangers must not take each other's words. */
class DangerPhrasesTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);

  @Test
  void every_phrase_of_a_danger_is_read_as_a_danger() {
    List<String> lost = new ArrayList<>();
    for (SignEntry sign : BOOK.catalog().signs().values()) {
      if (sign.redFlag()) {
        sign.phrases().stream()
            .filter(phrase -> !isDanger(phrase))
            .forEach(phrase -> lost.add(sign.id() + ": " + phrase));
      }
    }
    assertEquals("", String.join("\n", lost));
  }

  private static boolean isDanger(String phrase) {
    return INTAKE.read(phrase).signs().stream()
        .anyMatch(read -> read.present() && BOOK.catalog().signs().get(read.id()).redFlag());
  }
}
