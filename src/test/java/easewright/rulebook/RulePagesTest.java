package easewright.rulebook;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Runs every fenced case of every rule page. */
class RulePagesTest {
  @TestFactory
  Stream<DynamicTest> casesOfTheRulePages() {
    PageCases cases = new PageCases();
    return PageCases.BOOK.source().pages().values().stream()
        .flatMap(
            page ->
                page.cases().stream()
                    .map(
                        one ->
                            DynamicTest.dynamicTest(
                                page.id() + " " + one.kind() + ": " + one.heading(),
                                () -> cases.run(one))));
  }
}
