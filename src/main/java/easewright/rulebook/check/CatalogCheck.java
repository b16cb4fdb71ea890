package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.measure.Length;
import easewright.rulebook.check.Names.Entry;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Looks up every name that entries of the catalog use. The schemas list their words; what those
 * words stand for is among the parameters and sentences that the code needs of every book.
 */
final class CatalogCheck {
  private final Names names;
  private final KnownWords words;
  private final Set<String> sentences;
  private final List<BookProblem> problems;

  CatalogCheck(Names names, KnownWords words, Set<String> sentences, List<BookProblem> problems) {
    this.names = names;
    this.words = words;
    this.sentences = sentences;
    this.problems = problems;
  }

  void run() {
    Set<String> parameters = names.ids("parameters");
    names
        .entries("signs")
        .values()
        .forEach(
            sign -> {
              if (!sign.node().path("redFlag").asBoolean() && !sign.node().has("degrees")) {
                problems.add(
                    sign.problem(
                        "id",
                        "\"degrees\" is missing in " + sign.node().path("id").asText() + ".",
                        "Describe slight, clear and strong, or mark it redFlag: true."));
              }
            });
    Set<String> told = new HashSet<>(figures());
    told.addAll(names.ids("findings"));
    told.addAll(names.ids("signs"));
    for (Entry sign : names.entries("signs").values()) {
      ids(sign, "answeredBy", "figure, finding or sign", told);
      ids(sign, "decides", "cause", names.ids("causes"));
      ids(sign, "proves", "adjustment", names.ids("adjustments"));
      ids(sign, "usual", "parameter", parameters);
    }
    for (Entry sign : names.entries("findings").values()) {
      ids(sign, "figure", "figure", figures());
      both(sign);
    }
    for (Entry cause : names.entries("causes").values()) {
      ids(cause, "lookAlikes", "cause", names.ids("causes"));
      ids(cause, "indistinguishableFrom", "cause", names.ids("causes"));
    }
    for (Entry adjustment : names.entries("adjustments").values()) {
      ids(adjustment, "sideEffects", "sign", names.ids("signs"));
      ids(adjustment, "givesBack", "adjustment", names.ids("adjustments"));
      ids(adjustment, "limit", "parameter", parameters);
      ids(adjustment, "beyond", "adjustment", names.ids("adjustments"));
      firstSteps(adjustment);
    }
    for (Entry parameter : names.entries("parameters").values()) {
      unit(parameter);
    }
    missing(words.parameters(), parameters, "parameters", "parameter");
    missing(words.sentences(), sentences, "wording.yaml", "sentence");
  }

  /** Every figure a rule or a finding may name, the amounts of signs among them. */
  Collection<String> figures() {
    Set<String> figures = new java.util.TreeSet<>(words.figures());
    figures.addAll(names.ids("figures"));
    names.ids("signs").forEach(sign -> figures.add("amount-of-" + sign));
    return figures;
  }

  private void missing(Set<String> needed, Set<String> there, String file, String what) {
    needed.stream()
        .filter(id -> !there.contains(id))
        .forEach(
            id ->
                problems.add(
                    new BookProblem(
                        file,
                        0,
                        "The " + what + " " + id + " is missing, and the computing needs it.",
                        "Write it again under that id.")));
  }

  private void both(Entry finding) {
    if (names.ids("signs").contains(finding.node().path("id").asText())) {
      problems.add(
          finding.problem(
              "id",
              finding.node().path("id").asText() + " is both a sign and a finding.",
              "Rename one of them: a cause may show as either."));
    }
  }

  private void ids(Entry entry, String field, String what, Collection<String> known) {
    JsonNode value = entry.node().path(field);
    if (value.isTextual()) {
      look(entry, field, value.textValue(), what, known);
    }
    for (int i = 0; value.isArray() && i < value.size(); i++) {
      look(entry, field + "/" + i, value.get(i).asText(), what, known);
    }
  }

  private void look(Entry entry, String field, String id, String what, Collection<String> known) {
    names.known(
        id,
        what,
        known,
        entry.written().file(),
        entry.written().line(entry.pointer() + "/" + field),
        "Write the id of a " + what + " of this book.");
  }

  private void firstSteps(Entry adjustment) {
    for (Map.Entry<String, JsonNode> step : adjustment.node().path("firstStep").properties()) {
      try {
        Length.parse(step.getValue().asText());
      } catch (RuntimeException unreadable) {
        problems.add(
            adjustment.problem(
                "firstStep/" + step.getKey(),
                "\"" + step.getValue().asText() + "\" is no length.",
                "Write a number with its unit: 10 mm."));
      }
    }
  }

  private void unit(Entry parameter) {
    String value = parameter.node().path("value").asText("");
    if (value.matches("-?[0-9.]+") && !parameter.node().has("unit")) {
      problems.add(
          parameter.problem(
              "value", "\"" + value + "\" has no unit.", "Write \"3 %\", or unit: count beside."));
    }
  }
}
