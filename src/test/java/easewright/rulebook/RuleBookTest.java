package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.Catalog.CautionEntry;
import easewright.rulebook.Catalog.Entry;
import easewright.rulebook.Catalog.SignEntry;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What only the project asks of its book: that nothing in it is unused. What must be so in any book
 * is checked when it is loaded ({@code OwnBookTest}).
 */
class RuleBookTest {
  private static final RuleBookSource SOURCE = RuleBookSource.read(Path.of("rules"));
  private static final Catalog CATALOG = SOURCE.catalog();

  private final List<String> faults = new ArrayList<>();

  /** What the rules of each family say in any fitting. */
  private static Stream<Conclusions> always() {
    return RuleBook.compiledIn().families().values().stream().map(RuleBook::always);
  }

  private void fault(String where, String problem) {
    faults.add(where + ": " + problem);
  }

  private void noFaults() {
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void every_parameter_is_used() {
    String all =
        SOURCE.rules().stream()
                .flatMap(r -> r.comparisons().stream().map(RuleText.Comparison::parameter))
                .collect(Collectors.joining("\n", "\n", "\n"))
            + Names.JAVA_SOURCES
            + CATALOG.adjustments().values().stream()
                .map(a -> "\n" + a.limit() + "\n")
                .collect(Collectors.joining())
            + CATALOG.signs().values().stream()
                .map(sign -> "\n" + sign.usual() + "\n")
                .collect(Collectors.joining())
            + SOURCE.families().values().stream()
                .flatMap(family -> family.measures().garment().stream())
                .map(one -> "\n" + one.least() + "\n" + one.most() + "\n")
                .collect(Collectors.joining());
    for (String id : SOURCE.parameters().keySet()) {
      boolean word =
          Names.WORDS.stream().anyMatch(prefix -> id.startsWith(prefix))
              || Names.bareWords(SOURCE).contains(id);
      if (!word && !all.contains("\n" + id + "\n") && !all.contains("\"" + id + "\"")) {
        fault(id, "is a parameter nothing uses");
      }
    }
    noFaults();
  }

  /**
   * A danger is answered in words of its own, and in few: the short reply holds 120 words. What is
   * no matter of the garment is not answered with leaving it off, and a lump does not "come back".
   */
  @Test
  void every_danger_says_what_to_do_in_its_own_words() {
    Set<String> deeds = new HashSet<>();
    List<CautionEntry> dangers =
        CATALOG.cautions().values().stream().filter(c -> c.urgency().equals("stop")).toList();
    for (CautionEntry danger : dangers) {
      if (!deeds.add(danger.doNow()) || !deeds.add(danger.after())) {
        fault(danger.id(), "says what another danger says");
      }
      String all = String.join(" ", danger.says(), danger.doNow(), danger.who(), danger.after());
      if (all.split("\\s+").length > 100) {
        fault(danger.id(), "takes " + all.split("\\s+").length + " words");
      }
      if (!danger.garment()
          && Pattern.compile("leave (it|the garment) off|wear something|come back")
              .matcher(all.toLowerCase(Locale.ROOT))
              .find()) {
        fault(danger.id(), "is no matter of the garment");
      }
      if (!danger.after().contains("can wait")) {
        fault(danger.id(), "does not say that the sewing can wait");
      }
      if (danger.soon().equals("now") && !all.toLowerCase(Locale.ROOT).contains("emergency")) {
        fault(danger.id(), "does not name emergency help");
      }
    }
    assertTrue(dangers.size() >= 25, "dangers are missing: " + dangers.size());
    noFaults();
  }

  /** A danger is what a red flag raises, and a red flag raises a danger. */
  @Test
  void every_red_flag_has_a_danger_and_every_danger_a_red_flag() {
    for (RuleText rule : SOURCE.rules()) {
      CautionEntry caution = CATALOG.cautions().get(rule.file());
      if (caution != null && rule.body().contains("show the caution")) {
        boolean flagged =
            CATALOG.signs().values().stream()
                .filter(SignEntry::redFlag)
                .anyMatch(sign -> rule.body().contains("reports \"" + sign.name() + "\""));
        if (flagged != caution.urgency().equals("stop")) {
          fault(rule.name(), flagged ? "is no danger" : "is a danger without a red flag");
        }
      }
    }
    noFaults();
  }

  @Test
  void a_danger_that_does_not_say_what_to_do_is_refused() {
    RuleBookFault silent =
        assertThrows(
            RuleBookFault.class,
            () ->
                new CautionEntry(
                    "x",
                    "x",
                    "It is so.",
                    "a doctor",
                    "stop",
                    "",
                    null,
                    "now",
                    "Tell.",
                    true,
                    null));
    assertEquals(
        "Caution x is of urgency stop; it needs do, soon, after and garment.", silent.getMessage());
    RuleBookFault unclear =
        assertThrows(RuleBookFault.class, () -> CATALOG.practice().order().soonness("later"));
    assertEquals("practice/order.yaml does not say how soon later is.", unclear.getMessage());
  }

  @Test
  void every_sign_is_shown_by_a_cause_or_is_a_red_flag() {
    Set<String> shown =
        always()
            .flatMap(said -> said.shows().stream())
            .map(Conclusions.Shows::sign)
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
  void every_adjustment_cures_something_and_every_cause_is_cured() {
    Set<String> curing =
        always()
            .flatMap(said -> said.cures().stream())
            .map(Conclusions.Cures::adjustment)
            .collect(Collectors.toSet());
    Set<String> cured =
        always()
            .flatMap(said -> said.cures().stream())
            .map(Conclusions.Cures::cause)
            .collect(Collectors.toSet());
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
  void no_session_is_left_open_after_the_book_is_loaded() {
    assertEquals(0, RuleBook.compiledIn().openSessions());
  }

  @Test
  void every_sentence_of_the_vocabulary_is_used_by_a_rule() {
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
  void a_cause_links_each_sign_once_in_any_fitting() {
    always()
        .forEach(
            said -> {
              Set<List<String>> seen = new HashSet<>();
              said.shows().stream()
                  .filter(shows -> !seen.add(List.of(shows.cause(), shows.sign())))
                  .forEach(shows -> fault(shows.cause(), "shows twice as " + shows.sign()));
            });
    noFaults();
  }

  @Test
  void the_compiled_book_is_the_book_in_the_folder() {
    assertEquals(SOURCE.hash(), RuleBook.compiledIn().source().hash());
    assertTrue(SOURCE.rules().size() > 20);
  }
}
