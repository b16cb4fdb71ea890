package easewright.rulebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.answering.CaseTrials;
import easewright.answering.PageCases;
import easewright.diagnosis.Diagnosis;
import easewright.fitting.Fitting;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownFamilies;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/** Runs the named cases of the book against mutations of it. */
final class BookProof {
  private static final PatternSheets SHEETS = new PatternSheets();

  private final RuleBook plain = RuleBook.compiledIn();
  private final List<BookMutation> mutations;
  private final RuleBook withStandIns;
  private final FittingReader reader = new FittingReader(KnownFamilies.of(plain.whole(), SHEETS));
  private final List<Named> cases = new ArrayList<>();

  /**
   * A case that holds in the whole book.
   *
   * @param page its page, or "look-alikes"
   * @param rules keys of the rules that spoke in it
   * @param observed the signs and findings it reports or has judged
   */
  private record Named(
      String page, String place, CaseTrials read, Set<String> rules, Set<String> observed) {}

  BookProof() {
    BookMutation.All all = BookMutation.of(plain.whole());
    this.mutations = all.mutations();
    this.withStandIns = RuleBook.of(all.withStandIns());
    Set<String> spoke = ConcurrentHashMap.newKeySet();
    Set<String> found = ConcurrentHashMap.newKeySet();
    RuleBook listened =
        plain.heardBy(
            texts ->
                new MutedConclusions(
                    texts,
                    said -> {
                      spoke.add(said.rule());
                      if (said.call().startsWith("found(")) {
                        found.add(said.call().replaceAll("found\\(|,.*", ""));
                      }
                      return true;
                    }));
    PageCases pages = cases(listened);
    named()
        .forEach(
            one -> {
              spoke.clear();
              found.clear();
              List<String> wrong = pages.wrong(one.read());
              if (!wrong.isEmpty()) {
                throw new AssertionError(one.place() + " fails in the whole book: " + wrong);
              }
              Set<String> observed = new HashSet<>(found);
              one.read().trials().forEach(trial -> observed.addAll(signs(trial)));
              cases.add(
                  new Named(one.page(), one.place(), one.read(), Set.copyOf(spoke), observed));
            });
  }

  private static Set<String> signs(CaseTrials.Trial trial) {
    Set<String> signs = new HashSet<>();
    for (Fitting fitting :
        trial.without() == null
            ? List.of(trial.fitting())
            : List.of(trial.fitting(), trial.without())) {
      fitting.signs().forEach(sign -> signs.add(sign.id()));
    }
    return signs;
  }

  private PageCases cases(RuleBook book) {
    return new PageCases(reader, new Diagnosis(book, SHEETS.shipped()));
  }

  private Stream<Named> named() {
    return Stream.concat(
        plain.whole().pages().values().stream()
            .flatMap(
                page ->
                    page.cases().stream()
                        .map(one -> named(page.id(), PageCases.place(page, one), one))),
        lookAlikes().stream()
            .map(one -> named("look-alikes", "look-alikes.yaml: " + one.heading(), one)));
  }

  private Named named(String page, String place, RulePage.RuleCase one) {
    return new Named(page, place, CaseTrials.of(one, reader), Set.of(), Set.of());
  }

  /** The rows of {@code LookAlikesTest} that name a first cause. */
  private static List<RulePage.RuleCase> lookAlikes() {
    try (InputStream file = BookProof.class.getResourceAsStream("/look-alikes.yaml")) {
      List<RulePage.RuleCase> all = new ArrayList<>();
      for (JsonNode row : new YAMLMapper().readTree(file)) {
        for (JsonNode one : row.path("fittings")) {
          if (!one.path("first").asText().equals("nothing")) {
            ObjectNode given =
                one.path("numbers").isObject()
                    ? one.path("numbers").deepCopy()
                    : JsonNodeFactory.instance.objectNode();
            row.path("alike").forEach(sign -> report(given, sign, true));
            one.path("seen").forEach(sign -> report(given, sign, true));
            one.path("unseen").forEach(sign -> report(given, sign, false));
            ObjectNode then = JsonNodeFactory.instance.objectNode();
            then.set("first cause", one.path("first"));
            String heading = row.path("sign").asText() + ": " + one.path("it").asText();
            all.add(new RulePage.RuleCase("speaks", heading, 0, given, List.of(), then));
          }
        }
      }
      return all;
    } catch (IOException e) {
      throw new IllegalStateException("The table of look-alikes cannot be read.", e);
    }
  }

  private static void report(ObjectNode given, JsonNode sign, boolean present) {
    ObjectNode report = given.withArray("signs").addObject();
    report.put("sign", sign.asText()).put("seen", present ? "present" : "absent");
    if (present) {
      report.put("degree", "clear");
    }
  }

  List<BookMutation> mutations() {
    return mutations;
  }

  /** The first case that fails without this part of the book. */
  Optional<String> guardOf(BookMutation mutation) {
    RuleBook whole = mutation.part() == BookMutation.Part.CONDITION ? withStandIns : plain;
    PageCases mutant = cases(whole.heardBy(texts -> new MutedConclusions(texts, mutation::hears)));
    return cases.stream()
        .filter(one -> concerns(mutation, one))
        .sorted(Comparator.comparing(one -> !one.page().equals(mutation.rule().file())))
        .filter(one -> !mutant.wrong(one.read()).isEmpty())
        .map(Named::place)
        .findFirst();
  }

  /** The same by a book that was compiled without it. */
  Optional<String> guardOf(BookMutation mutation, RuleBook compiled) {
    PageCases mutant = cases(compiled);
    return cases.stream()
        .sorted(Comparator.comparing(one -> !one.page().equals(mutation.rule().file())))
        .filter(one -> !mutant.wrong(one.read()).isEmpty())
        .map(Named::place)
        .findFirst();
  }

  /** Whether the part can matter in a case at all. */
  private static boolean concerns(BookMutation mutation, Named one) {
    if (mutation.part() == BookMutation.Part.CONDITION) {
      return true;
    }
    if (!mutation.always()) {
      return one.rules().contains(mutation.rule().key());
    }
    return !mutation.call().startsWith("shows(")
        || one.observed().contains(mutation.call().replaceAll("^.*,|\\)$", ""));
  }
}
