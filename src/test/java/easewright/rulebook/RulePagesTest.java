package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.fail;

import easewright.api.PageCases;
import easewright.pattern.PatternSheets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Runs every fenced case of every rule page. */
class RulePagesTest {
  static final RuleBook BOOK = RuleBook.compiledIn();

  /** The failure says the page, the line and the heading: Maven shows the name of no case. */
  static void run(PageCases cases, RulePage page, RulePage.RuleCase one) {
    List<String> wrong = cases.wrong(one);
    if (!wrong.isEmpty()) {
      fail("rules/" + PageCases.place(page, one) + "\n" + String.join("\n", wrong));
    }
  }

  @TestFactory
  Stream<DynamicTest> casesOfTheRulePages() {
    PageCases cases = new PageCases(BOOK, new PatternSheets());
    return BOOK.source().pages().values().stream()
        .flatMap(
            page ->
                page.cases().stream()
                    .map(
                        one ->
                            DynamicTest.dynamicTest(
                                PageCases.place(page, one),
                                Path.of("rules", page.path()).toUri(),
                                () -> run(cases, page, one))));
  }
}
