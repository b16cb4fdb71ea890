package easewright.rulebook;

import easewright.answering.PageCases;
import easewright.pattern.PatternSheets;
import org.junit.jupiter.api.Test;

/**
 * The cases of {@link RulePagesTest} in one test, to be set against mutants of the diagnosis: PIT
 * would take two minutes for each test that a factory makes.
 */
class AllPagesTest {
  @Test
  void every_case_of_every_page_holds() {
    PageCases cases = new PageCases(RulePagesTest.BOOK, new PatternSheets());
    RulePagesTest.BOOK
        .source()
        .pages()
        .values()
        .forEach(page -> page.cases().forEach(one -> RulePagesTest.run(cases, page, one)));
  }
}
