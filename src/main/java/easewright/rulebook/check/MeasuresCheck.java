package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.measure.BadQuantity;
import easewright.measure.BodyMeasurements;
import easewright.measure.Length;
import easewright.rulebook.Family;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Checks what one family of garments says of its measurements. */
final class MeasuresCheck {
  private final Written file;
  private final Names names;
  private final KnownWords words;
  private final List<BookProblem> problems;
  private final List<String> ofBody = new ArrayList<>();
  private final List<String> halves = new ArrayList<>();
  private final List<String> ofGarment = new ArrayList<>();

  private MeasuresCheck(Written file, Names names, KnownWords words, List<BookProblem> problems) {
    this.file = file;
    this.names = names;
    this.words = words;
    this.problems = problems;
  }

  /**
   * Checks the file of one family. A family may do without measurements; the usual one has those
   * that figures need.
   *
   * @param id of the family
   * @param yaml every readable YAML file of the book, by path
   */
  static void run(
      String id,
      Written family,
      Map<String, Written> yaml,
      Names names,
      KnownWords words,
      List<BookProblem> problems) {
    Written measures = yaml.get(id + "/" + Family.MEASURES);
    boolean usual = family.tree().path("usual").asBoolean();
    if (measures != null) {
      new MeasuresCheck(measures, names, words, problems).run(usual);
    } else if (usual) {
      problems.add(
          new BookProblem(
              id + "/" + Family.MEASURES,
              0,
              "The file is missing, and figures are computed from what it measures.",
              "Take it over from the book that came with the program."));
    }
  }

  /**
   * @param usual whether the family serves requests that tell of none, with all that the code
   *     computes for it
   */
  private void run(boolean usual) {
    each("/measurements", this::ofBody);
    each("/garment", this::ofGarment);
    if (usual) {
      BodyMeasurements.IN_FORMULAS.stream()
          .filter(id -> !ofBody.contains(id))
          .forEach(
              id ->
                  problems.add(
                      file.problem(
                          "/measurements",
                          "The measurement " + id + " is missing; figures are computed from it.",
                          "Write it again.")));
    }
    each("/comparisons", this::comparison);
    each(
        "/orders",
        order -> List.of("larger", "smaller", "field").forEach(one -> measured(order + "/" + one)));
    List<String> held = new ArrayList<>(ofBody);
    held.addAll(halves);
    each("/held", way -> each(way + "/of", one -> known(one, "measurement of the body", held)));
    each("/figures", this::figure);
    each("/missing", this::missing);
    each("/edges", edge -> known(edge, "edge that requests can name", words.edges()));
  }

  private interface Check {
    void at(String pointer);
  }

  private void each(String list, Check check) {
    for (int i = 0; i < file.tree().at(list).size(); i++) {
      check.at(list + "/" + i);
    }
  }

  private void ofBody(String pointer) {
    JsonNode one = file.tree().at(pointer);
    once(pointer, one.path("id").asText(), ofBody);
    one.path("halves").fieldNames().forEachRemaining(half -> once(pointer, half, halves));
    ordered(pointer, "least", "most", false);
  }

  private void ofGarment(String pointer) {
    once(pointer, file.tree().at(pointer + "/id").asText(), ofGarment);
    for (String bound : List.of("least", "most")) {
      known(pointer + "/" + bound, "parameter", names.ids("parameters"));
    }
  }

  private void once(String pointer, String id, List<String> there) {
    if (there.contains(id)) {
      problems.add(
          file.problem(
              pointer, "The measurement " + id + " stands twice.", "Delete one of the two."));
    }
    there.add(id);
  }

  private void comparison(String pointer) {
    measured(pointer + "/first");
    measured(pointer + "/second");
    ordered(pointer, "low", "high", file.tree().at(pointer + "/as").asText().equals("ratio"));
  }

  private void figure(String pointer) {
    String id = file.tree().at(pointer + "/id").asText();
    if (words.figures().contains(id)) {
      problems.add(
          file.problem(
              pointer + "/id", "The program computes a figure called " + id + ".", "Rename it."));
    }
    List<String> numbers = new ArrayList<>();
    ofBody.forEach(one -> numbers.add("body/" + one));
    ofGarment.forEach(one -> numbers.add("garment/" + one));
    for (String field : List.of("of", "less", "over")) {
      if (file.tree().at(pointer).has(field)) {
        known(pointer + "/" + field, "measurement", numbers);
      }
    }
  }

  private void missing(String pointer) {
    each(pointer + "/body", this::measured);
    each(pointer + "/once", this::measured);
    each(pointer + "/garment", one -> known(one, "measurement of the garment", ofGarment));
  }

  private void measured(String pointer) {
    known(pointer, "measurement of the body", ofBody);
  }

  private void known(String pointer, String what, Collection<String> known) {
    names.known(
        file.tree().at(pointer).asText(),
        what,
        known,
        file.file(),
        file.line(pointer),
        "Write a " + what + " of this family.");
  }

  /** An empty range would doubt every measurement. */
  private void ordered(String pointer, String low, String high, boolean ratio) {
    OptionalDouble from = number(pointer + "/" + low, ratio);
    OptionalDouble to = number(pointer + "/" + high, ratio);
    if (from.isPresent() && to.isPresent() && from.getAsDouble() >= to.getAsDouble()) {
      problems.add(
          file.problem(
              pointer + "/" + low,
              "\"" + low + "\" is not below \"" + high + "\".",
              "Write the smaller of the two first."));
    }
  }

  private OptionalDouble number(String pointer, boolean ratio) {
    String text = file.tree().at(pointer).asText();
    try {
      return OptionalDouble.of(ratio ? Double.parseDouble(text) : Length.parse(text).mm());
    } catch (NumberFormatException | BadQuantity unreadable) {
      problems.add(
          file.problem(
              pointer,
              "\"" + text + "\" is no " + (ratio ? "ratio." : "length."),
              ratio ? "Write a number: 1.085." : "Write a number with its unit: 63 mm."));
      return OptionalDouble.empty();
    }
  }
}
