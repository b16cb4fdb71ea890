package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A number that is compared is always told, whatever sentence compares it. */
class VocabularyTest {
  private static final String NEW =
      "\n[when]the \"{figure}\" falls short of \"{limit}\"=Figure(id == \"{figure}\", value %s)\n";
  private static final String FILE = "sports-bra/findings/band-slack-by-measure.dslr";

  @TempDir Path folder;

  private BookCopy withSentence(String comparison) {
    BookCopy book = BookCopy.in(folder);
    book.write("vocabulary.dsl", book.text("vocabulary.dsl") + NEW.formatted(comparison));
    book.put(FILE, "the \"band strain\" is below", "the \"band strain\" falls short of");
    return book;
  }

  @Test
  void a_comparison_in_a_new_sentence_is_told_as_in_the_old_one() {
    BookCopy book = withSentence("< parameter(\"{limit}\")");
    List<RuleText.Comparison> told =
        RuleBookSource.read(book.folder()).rules().stream()
            .filter(rule -> rule.name().equals("band slack by measure: it holds"))
            .findFirst()
            .orElseThrow()
            .comparisons();
    assertEquals(
        List.of(new RuleText.Comparison("band-strain", "below", "slack-band-strain")), told);
  }

  @Test
  void a_sentence_whose_comparison_cannot_be_told_is_refused_with_its_line() {
    BookCopy book = withSentence("- parameter(\"{limit}\") < 0");
    RuleBookFault fault =
        assertThrows(RuleBookFault.class, () -> RuleBookSource.read(book.folder()));
    int line = book.line("vocabulary.dsl", "falls short of");
    assertTrue(fault.getMessage().startsWith("vocabulary.dsl:" + line + ":"), fault.getMessage());
  }

  @Test
  void a_comparison_that_shares_its_line_is_refused() {
    BookCopy book = BookCopy.in(folder);
    book.put(FILE, "  the \"band strain\" is below", "  any the \"band strain\" is below");
    RuleBookFault fault = assertThrows(RuleBookFault.class, () -> RuleBook.compile(book.folder()));
    assertTrue(fault.getMessage().contains("band-slack-by-measure"), fault.getMessage());
  }
}
