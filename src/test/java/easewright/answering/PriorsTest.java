package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import easewright.rulebook.BookCopy;
import easewright.rulebook.Catalog.CauseEntry;
import easewright.rulebook.RuleBook;
import easewright.rulebook.check.BookProblem;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How common a cause is has a source, or is said to be judgement. */
class PriorsTest {
  private static final OwnBook OWN = new OwnBook(new PatternSheets());
  private static final String CAUSES = "catalog/causes/band.yaml";

  @TempDir Path folder;

  private void assertRefused(String written, String names) {
    BookCopy.in(folder).put(CAUSES, "  priorSource: judgement\n", written);
    List<BookProblem> problems = OWN.problems(folder);
    assertEquals(1, problems.size(), problems.toString());
    assertTrue(problems.get(0).toString().contains(CAUSES), problems.toString());
    assertTrue(problems.get(0).toString().contains(names), problems.toString());
  }

  @Test
  void a_prior_without_a_source_is_refused() {
    assertRefused("", "priorSource");
  }

  @Test
  void a_source_that_is_neither_judgement_nor_dated_is_refused() {
    assertRefused("  priorSource: everybody knows\n", "or \"judgement\"");
  }

  @Test
  void the_quality_report_says_how_many_are_judgement_alone() {
    List<String> sources =
        RuleBook.compiledIn().catalog().causes().values().stream()
            .map(CauseEntry::priorSource)
            .toList();
    assertEquals(67, sources.stream().filter("judgement"::equals).count());
    assertEquals(74, sources.size());
  }
}
