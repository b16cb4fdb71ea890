package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.answering.PageCases;
import easewright.pattern.PatternSheets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.opentest4j.AssertionFailedError;

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

  @Test
  void a_case_that_fails_names_its_page_its_line_and_its_heading() {
    RulePage page = BOOK.source().pages().get("band-too-long");
    RulePage.RuleCase sound = page.cases().get(0);
    RulePage.RuleCase wrong =
        new RulePage.RuleCase(
            sound.kind(),
            sound.heading(),
            sound.line(),
            sound.given(),
            sound.withEach(),
            JsonNodeFactory.instance.objectNode().put("first cause", "band-too-short"));
    PageCases cases = new PageCases(BOOK, new PatternSheets());
    AssertionFailedError failure =
        assertThrows(AssertionFailedError.class, () -> run(cases, page, wrong));
    String begins =
        "rules/sports-bra/band/band-too-long.md:%d, speaks: %s\nexpected first cause: band-too-short"
            .formatted(sound.line(), sound.heading());
    assertTrue(failure.getMessage().startsWith(begins), failure.getMessage());
  }

  /** A failure names a case by its heading; a reader looks for a situation by it. */
  @Test
  void no_heading_stands_over_two_cases_of_a_page() {
    List<String> twice = new ArrayList<>();
    for (RulePage page : BOOK.source().pages().values()) {
      Set<String> seen = new HashSet<>();
      page.cases().stream()
          .filter(one -> !seen.add(one.heading().toLowerCase(Locale.ROOT)))
          .forEach(one -> twice.add(PageCases.place(page, one)));
    }
    assertEquals(List.of(), twice);
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
