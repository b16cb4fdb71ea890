package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.Catalog.Entry;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What only the project asks of its book: that nothing in it is unused. What must be so in any book
 * is checked when it is loaded ({@code BookCheckTest}).
 */
class RuleBookTest {
  private static final RuleBookSource SOURCE = RuleBookSource.read(Path.of("rules"));
  private static final Catalog CATALOG = SOURCE.catalog();

  private final List<String> faults = new ArrayList<>();

  private void fault(String where, String problem) {
    faults.add(where + ": " + problem);
  }

  private void noFaults() {
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void everyParameterIsUsed() {
    String all =
        SOURCE.rules().stream()
                .flatMap(r -> r.comparisons().stream().map(RuleText.Comparison::parameter))
                .collect(Collectors.joining("\n", "\n", "\n"))
            + Names.JAVA_SOURCES
            + CATALOG.adjustments().values().stream()
                .map(a -> "\n" + a.limit() + "\n")
                .collect(Collectors.joining());
    for (String id : SOURCE.parameters().keySet()) {
      boolean word =
          Names.WORDS.stream().anyMatch(prefix -> id.startsWith(prefix))
              || Names.BARE_WORDS.contains(id);
      if (!word && !all.contains("\n" + id + "\n") && !all.contains("\"" + id + "\"")) {
        fault(id, "is a parameter nothing uses");
      }
    }
    noFaults();
  }

  @Test
  void everySignIsShownByACauseOrIsARedFlag() {
    Set<String> shown =
        RuleBook.compiledIn().always().shows().stream()
            .map(Statements.Shows::sign)
            .collect(Collectors.toSet());
    CATALOG.signs().values().stream()
        .filter(sign -> !sign.redFlag() && !shown.contains(sign.id()))
        .forEach(sign -> fault(sign.id(), "is a sign no cause shows as"));
    CATALOG.findings().keySet().stream()
        .filter(id -> !shown.contains(id))
        .filter(
            id ->
                SOURCE.rules().stream()
                    .noneMatch(
                        r ->
                            r.body()
                                    .contains(
                                        "it is found that \""
                                            + CATALOG.findings().get(id).name()
                                            + "\"")
                                && !r.file().equals(id)))
        .forEach(id -> fault(id, "is a finding that nothing speaks of"));
    noFaults();
  }

  @Test
  void everyAdjustmentCuresSomethingAndEveryCauseIsCured() {
    Statements always = RuleBook.compiledIn().always();
    Set<String> curing =
        always.cures().stream().map(Statements.Cures::adjustment).collect(Collectors.toSet());
    Set<String> cured =
        always.cures().stream().map(Statements.Cures::cause).collect(Collectors.toSet());
    String rules = SOURCE.rules().stream().map(RuleText::body).collect(Collectors.joining("\n"));
    unused(CATALOG.adjustments(), curing, rules, "is an adjustment no rule offers");
    CATALOG.causes().keySet().stream()
        .filter(id -> !cured.contains(id))
        .forEach(id -> fault(id, "is a cause nothing cures"));
    noFaults();
  }

  private void unused(
      Map<String, ? extends Entry> part, Set<String> used, String rules, String problem) {
    part.values().stream()
        .filter(entry -> !used.contains(entry.id()))
        .filter(entry -> !rules.contains("\"" + entry.name() + "\""))
        .forEach(entry -> fault(entry.id(), problem));
  }

  @Test
  void noSessionIsLeftOpenAfterTheBookIsLoaded() {
    assertEquals(0, RuleBook.compiledIn().openSessions());
  }

  @Test
  void everySentenceOfTheVocabularyIsUsedByARule() {
    String rules = SOURCE.rules().stream().map(RuleText::body).collect(Collectors.joining("\n"));
    SOURCE
        .vocabulary()
        .lines()
        .filter(line -> line.startsWith("["))
        .map(line -> line.substring(line.indexOf(']') + 1, line.indexOf('=')))
        .filter(sentence -> !Pattern.compile(pattern(sentence)).matcher(rules).find())
        .forEach(sentence -> fault(sentence, "is a sentence no rule uses"));
    noFaults();
  }

  private static String pattern(String sentence) {
    return Stream.of(sentence.split("\\{[a-z]+}"))
        .map(Pattern::quote)
        .collect(Collectors.joining("[^\"]+"));
  }

  @Test
  void aCauseLinksEachSignOnceInAnyFitting() {
    Set<List<String>> seen = new HashSet<>();
    RuleBook.compiledIn().always().shows().stream()
        .filter(shows -> !seen.add(List.of(shows.cause(), shows.sign())))
        .forEach(shows -> fault(shows.cause(), "shows twice as " + shows.sign()));
    noFaults();
  }

  @Test
  void theCompiledBookIsTheBookInTheFolder() {
    assertEquals(SOURCE.hash(), RuleBook.compiledIn().source().hash());
    assertTrue(SOURCE.rules().size() > 20);
  }
}
