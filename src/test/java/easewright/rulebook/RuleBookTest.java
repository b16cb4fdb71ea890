package easewright.rulebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.diagnosis.AmountMethodsForTests;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.CauseEntry;
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
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Walks the whole book and reports every failure at once. */
class RuleBookTest {
  private static final RuleBookSource SOURCE = RuleBookSource.read(Path.of("rules"));
  private static final Catalog CATALOG = SOURCE.catalog();
  private static final Set<String> SPECIAL_PAGES = Set.of("adjustments", "cautions", "findings");

  private final List<String> faults = new ArrayList<>();

  private void fault(String where, String problem) {
    faults.add(where + ": " + problem);
  }

  private void noFaults() {
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void everyRuleHasSummarySourceAndDate() {
    for (RuleText rule : SOURCE.rules()) {
      if (rule.summary().isBlank() || rule.source().isBlank() || rule.since().isBlank()) {
        fault(rule.name(), "needs @summary, @source and @since");
      }
    }
    noFaults();
  }

  @Test
  void ruleNamesAreUnique() {
    Set<String> seen = new HashSet<>();
    SOURCE.rules().stream()
        .map(RuleText::name)
        .filter(name -> !seen.add(name))
        .forEach(name -> fault(name, "stands twice"));
    noFaults();
  }

  @Test
  void everyRuleFileHasAPageAndEveryPageARuleFile() {
    SOURCE.files().keySet().stream()
        .filter(id -> !SOURCE.pages().containsKey(id))
        .forEach(id -> fault(id, "has no page"));
    SOURCE.pages().keySet().stream()
        .filter(id -> !SOURCE.files().containsKey(id))
        .forEach(id -> fault(id, "is a page without rules"));
    noFaults();
  }

  @Test
  void everyPageHasASpeakingAndASilentCaseAndABoundaryWhereANumberIsCompared() {
    for (RulePage page : SOURCE.pages().values()) {
      Set<String> kinds =
          page.cases().stream().map(RulePage.RuleCase::kind).collect(Collectors.toSet());
      Stream.of("speaks", "silent")
          .filter(kind -> !kinds.contains(kind))
          .forEach(kind -> fault(page.id(), "has no case that " + kind));
      boolean compares =
          SOURCE.rules().stream()
              .anyMatch(rule -> rule.file().equals(page.id()) && !rule.comparisons().isEmpty());
      if (compares && !kinds.contains("boundary")) {
        fault(page.id(), "compares a number and has no boundary case");
      }
      kinds.stream()
          .filter(kind -> !Set.of("speaks", "silent", "boundary").contains(kind))
          .forEach(kind -> fault(page.id(), "has a case of unknown kind " + kind));
    }
    noFaults();
  }

  @Test
  void everyCauseFindingAndCautionHasARuleFile() {
    Stream.of(CATALOG.causes(), CATALOG.findings(), CATALOG.cautions())
        .flatMap(part -> part.keySet().stream())
        .filter(id -> !SOURCE.files().containsKey(id))
        .forEach(id -> fault(id, "has no rule file"));
    noFaults();
  }

  @Test
  void everyRuleFileIsNamedAfterAnEntryOfTheCatalog() {
    Set<String> known =
        Stream.of(CATALOG.causes(), CATALOG.findings(), CATALOG.cautions(), CATALOG.adjustments())
            .flatMap(part -> part.keySet().stream())
            .collect(Collectors.toSet());
    SOURCE.files().keySet().stream()
        .filter(id -> !known.contains(id))
        .forEach(id -> fault(id, "is named after nothing in the catalog"));
    noFaults();
  }

  @Test
  void signsAndFindingsShareNoId() {
    CATALOG.signs().keySet().stream()
        .filter(CATALOG.findings()::containsKey)
        .forEach(id -> fault(id, "is both a sign and a finding"));
    noFaults();
  }

  @Test
  void everyNameInARuleIsKnown() {
    Pattern quoted = Pattern.compile("\"([^\"]+)\"");
    Set<String> known = new HashSet<>(SOURCE.parameters().keySet());
    Stream.of(
            CATALOG.signs(),
            CATALOG.causes(),
            CATALOG.findings(),
            CATALOG.adjustments(),
            CATALOG.cautions(),
            CATALOG.reasons())
        .forEach(part -> known.addAll(part.keySet()));
    known.addAll(Names.CIRCUMSTANCES);
    known.addAll(Names.TRAITS);
    known.addAll(Names.FIGURES);
    known.addAll(List.of("better", "same", "worse"));
    CATALOG.signs().values().forEach(s -> known.addAll(s.where()));
    CATALOG.signs().keySet().forEach(id -> known.add("amount-of-" + id));
    for (RuleText rule : SOURCE.rules()) {
      rule.body()
          .lines()
          .filter(line -> !line.contains("the choice \""))
          .flatMap(line -> quoted.matcher(line).results().map(m -> RuleReader.id(m.group(1))))
          .filter(id -> !known.contains(id))
          .forEach(id -> fault(rule.name(), "speaks of \"" + id + "\", which nothing defines"));
    }
    noFaults();
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
  void everyParameterSaysWhatForSinceAndSource() {
    for (Parameter parameter : SOURCE.parameters().values()) {
      assertTrue(Double.isFinite(parameter.number()), parameter.id());
      if (parameter.what() == null || parameter.since() == null || parameter.source() == null) {
        fault(parameter.id(), "needs for, since and source");
      }
    }
    noFaults();
  }

  @Test
  void everySignIsAskedPlacedAndSpokenOfAsPeopleDo() {
    for (SignEntry sign : CATALOG.signs().values()) {
      if (Stream.of(sign.name(), sign.ask(), sign.check(), sign.isNot(), sign.source())
          .anyMatch(text -> text == null || text.isBlank())) {
        fault(sign.id(), "needs name, ask, check, isNot and source");
      }
      if (sign.phrases() == null || new TreeSet<>(sign.phrases()).size() < 6) {
        fault(sign.id(), "needs six everyday phrasings");
      }
      if (sign.where() == null || sign.where().isEmpty() || sign.look() == null) {
        fault(sign.id(), "needs where and look");
      }
      if (!sign.redFlag()
          && (sign.degrees() == null
              || !sign.degrees().keySet().equals(Set.of("slight", "clear", "strong")))) {
        fault(sign.id(), "needs slight, clear and strong in words");
      }
      needsParameter(sign.id(), "ask-" + sign.effort());
      needsParameter(sign.id(), "without-fault-" + sign.withoutFault());
    }
    noFaults();
  }

  /**
   * A danger is answered in words of its own, and in few: the short reply holds 120 words. What is
   * no matter of the garment is not answered with leaving it off, and a lump does not "come back".
   */
  @Test
  void everyDangerSaysWhatToDoInItsOwnWords() {
    Set<String> deeds = new HashSet<>();
    List<CautionEntry> dangers =
        CATALOG.cautions().values().stream().filter(c -> c.urgency().equals("stop")).toList();
    for (CautionEntry danger : dangers) {
      if (!deeds.add(danger.doNow()) || !deeds.add(danger.after())) {
        fault(danger.id(), "says what another danger says");
      }
      String all = String.join(" ", danger.says(), danger.doNow(), danger.who(), danger.after());
      if (all.split("\\s+").length > 105) {
        fault(danger.id(), "takes " + all.split("\\s+").length + " words");
      }
      if (!danger.garment()
          && Pattern.compile("leave (it|the garment) off|wear something|come back")
              .matcher(all.toLowerCase(Locale.ROOT))
              .find()) {
        fault(danger.id(), "is no matter of the garment");
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
  void everyRedFlagHasADangerAndEveryDangerARedFlag() {
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
  void aDangerThatDoesNotSayWhatToDoIsRefused() {
    RuleBookFault silent =
        assertThrows(
            RuleBookFault.class,
            () ->
                new CautionEntry(
                    "x", "x", "It is so.", "a doctor", "stop", "", null, "now", "Tell.", true));
    assertEquals(
        "Caution x is of urgency stop; it needs do, soon, after and garment.", silent.getMessage());
    RuleBookFault unclear =
        assertThrows(
            RuleBookFault.class,
            () ->
                new CautionEntry(
                    "x", "x", "It is so.", "a doctor", "care", "", null, "later", null, null));
    assertEquals(
        "Caution x: soon is \"later\"; write one of [now, today, days, weeks].",
        unclear.getMessage());
  }

  @Test
  void everyCauseHasAPriorWithItsReasonAndAStage() {
    for (CauseEntry cause : CATALOG.causes().values()) {
      needsParameter(cause.id(), cause.prior());
      if (cause.priorWhy() == null || cause.says() == null || cause.source() == null) {
        fault(cause.id(), "needs says, priorWhy and source");
      }
      needsStage(cause.id(), cause.stage());
    }
    noFaults();
  }

  @Test
  void everyAdjustmentIsComplete() {
    for (AdjustmentEntry adjustment : CATALOG.adjustments().values()) {
      if (Stream.of(
              adjustment.does(),
              adjustment.check(),
              adjustment.why(),
              adjustment.undo(),
              adjustment.source())
          .anyMatch(text -> text == null || text.isBlank())) {
        fault(adjustment.id(), "needs does, check, why, undo and source");
      }
      if (adjustment.steps() == null || adjustment.steps().isEmpty()) {
        fault(adjustment.id(), "needs steps");
      }
      if (!AmountMethodsForTests.known(adjustment.method())) {
        fault(adjustment.id(), "names no known amount method: " + adjustment.method());
      }
      needsParameter(adjustment.id(), "effort-" + adjustment.effort());
      needsStage(adjustment.id(), adjustment.stage());
      if (adjustment.limit() != null) {
        needsParameter(adjustment.id(), adjustment.limit());
      }
      if (adjustment.beyond() != null && !CATALOG.adjustments().containsKey(adjustment.beyond())) {
        fault(adjustment.id(), "goes beyond to unknown " + adjustment.beyond());
      }
      if (adjustment.sideEffects() != null) {
        adjustment.sideEffects().stream()
            .filter(id -> !CATALOG.signs().containsKey(id))
            .forEach(id -> fault(adjustment.id(), "has an unknown side effect " + id));
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
  void namesInWordsMatchTheirIds() {
    Stream.of(
            CATALOG.signs(),
            CATALOG.causes(),
            CATALOG.findings(),
            CATALOG.adjustments(),
            CATALOG.cautions(),
            CATALOG.reasons())
        .flatMap(part -> part.values().stream())
        .filter(entry -> !RuleReader.id(entry.name()).equals(entry.id()))
        .forEach(entry -> fault(entry.id(), "is called \"" + entry.name() + "\""));
    noFaults();
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
  void noRuleHoldsABareNumber() {
    SOURCE.rules().stream()
        .filter(
            rule -> Pattern.compile("\\d").matcher(rule.body().replaceAll("\"[^\"]*\"", "")).find())
        .forEach(rule -> fault(rule.name(), "holds a bare number"));
    noFaults();
  }

  @Test
  void aCauseLinksEachSignOnceInAnyFitting() {
    Set<List<String>> seen = new HashSet<>();
    RuleBook.compiledIn().always().shows().stream()
        .filter(shows -> !seen.add(List.of(shows.cause(), shows.sign())))
        .forEach(shows -> fault(shows.cause(), "shows twice as " + shows.sign()));
    noFaults();
  }

  private void needsParameter(String where, String id) {
    if (!SOURCE.parameters().containsKey(id.replace(' ', '-'))) {
      fault(where, "needs the parameter " + id);
    }
  }

  private void needsStage(String where, String stage) {
    if (!AmountMethodsForTests.stage(stage)) {
      fault(where, "has no known stage: " + stage);
    }
  }

  @Test
  void theCompiledBookIsTheBookInTheFolder() {
    assertEquals(SOURCE.hash(), RuleBook.compiledIn().source().hash());
    assertTrue(SOURCE.rules().size() > 20);
  }
}
