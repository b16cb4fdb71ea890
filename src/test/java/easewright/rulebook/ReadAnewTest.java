package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.RuleBook.Consultation;
import easewright.rulebook.facts.Circumstance;
import easewright.rulebook.facts.Figure;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A changed book that is read anew says what it now says, not what the one built in says. */
class ReadAnewTest {
  private static final String RULE = "common/health/growing-wearer.dslr";

  @TempDir Path folder;

  private static long heldBack(RuleBook book) {
    try (Consultation consultation = book.open()) {
      return consultation.hear(List.of(new Circumstance("growing"))).tighteningHeld().size();
    }
  }

  private static boolean isSlack(RuleBook book, double excessMm) {
    Figure figure = new Figure("band-length-excess", excessMm, 0, "mm", "");
    try (Consultation consultation = book.open()) {
      return consultation.hear(List.of(figure)).judged().stream()
          .anyMatch(one -> one.finding().equals("band-slack-by-measure") && one.holds());
    }
  }

  @Test
  void a_sentence_taken_out_of_a_rule_is_said_no_more() {
    BookCopy copy = BookCopy.in(folder);
    long before = heldBack(RuleBook.compiledIn());
    assertNotEquals(0, before);
    assertEquals(before, heldBack(RuleBook.compile(folder)));
    String rule = copy.text(RULE);
    copy.write(RULE, rule.replaceFirst("  take up slack only .*\n", ""));
    assertEquals(before - 1, heldBack(RuleBook.compile(folder)));
  }

  /** Only files that differ are compiled, and a file differs where its parameter does. */
  @Test
  void a_changed_number_counts_in_every_rule_that_names_it() {
    BookCopy copy = BookCopy.in(folder);
    assertTrue(isSlack(RuleBook.compile(folder), 25));
    copy.put("parameters/band.yaml", "value: 20 mm", "value: 30 mm");
    RuleBook changed = RuleBook.compile(folder);
    assertTrue(!isSlack(changed, 25) && isSlack(changed, 35));
    assertEquals(RuleBook.compiledIn().always().shows().size(), changed.always().shows().size());
  }

  @Test
  void a_deleted_rule_file_is_gone() {
    BookCopy copy = BookCopy.in(folder);
    copy.delete(RULE);
    copy.delete(RULE.replace(".dslr", ".md"));
    assertEquals(0, heldBack(RuleBook.compile(folder)));
  }
}
