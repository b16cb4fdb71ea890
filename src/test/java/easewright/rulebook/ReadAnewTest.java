package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import easewright.rulebook.RuleBook.Consultation;
import easewright.rulebook.facts.Circumstance;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A changed book that is read anew says what it now says, not what the one built in says. */
class ReadAnewTest {
  private static final Path RULE = Path.of("sports-bra/cautions/growing-wearer.dslr");

  private static long heldBack(RuleBook book) {
    try (Consultation consultation = book.open()) {
      return consultation.hear(List.of(new Circumstance("growing"))).tighteningHeld().size();
    }
  }

  @Test
  void a_sentence_taken_out_of_a_rule_is_said_no_more(@TempDir Path folder) throws IOException {
    try (Stream<Path> rules = Files.walk(Path.of("rules"))) {
      for (Path file : rules.filter(Files::isRegularFile).toList()) {
        Path copy = folder.resolve(Path.of("rules").relativize(file));
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
    long before = heldBack(RuleBook.compiledIn());
    assertNotEquals(0, before);
    assertEquals(before, heldBack(RuleBook.compile(folder)));
    String rule = Files.readString(folder.resolve(RULE));
    Files.writeString(
        folder.resolve(RULE), rule.replaceFirst("  hold back whatever tightens .*\n", ""));
    assertEquals(before - 1, heldBack(RuleBook.compile(folder)));
  }
}
