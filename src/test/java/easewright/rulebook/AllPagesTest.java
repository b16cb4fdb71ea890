package easewright.rulebook;

import org.junit.jupiter.api.Test;

/**
 * The cases of {@link RulePagesTest} in one test, to be set against mutants of the diagnosis: PIT
 * would take two minutes for each test that a factory makes.
 */
class AllPagesTest {
  @Test
  void every_case_of_every_page_holds() {
    PageCases cases = new PageCases();
    PageCases.BOOK.source().pages().values().forEach(page -> page.cases().forEach(cases::run));
  }
}
