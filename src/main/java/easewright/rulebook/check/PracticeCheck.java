package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.rulebook.Practice;
import easewright.rulebook.check.Names.Entry;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Checks what {@code practice/} says, and the words of the catalog that come from there. */
final class PracticeCheck {
  private final Names names;
  private final KnownWords words;
  private final Set<String> sentences;
  private final List<BookProblem> problems;
  private final Map<String, Written> files = new LinkedHashMap<>();

  /**
   * @param yaml every readable YAML file of the book, by path
   * @param sentences keys of the book's wording
   */
  PracticeCheck(
      Map<String, Written> yaml,
      Names names,
      KnownWords words,
      Set<String> sentences,
      List<BookProblem> problems) {
    this.names = names;
    this.words = words;
    this.sentences = sentences;
    this.problems = problems;
    for (String name : Practice.FILES) {
      Written file = yaml.get(Practice.FOLDER + name + ".yaml");
      if (file != null) {
        files.put(name, file);
      } else {
        problems.add(
            new BookProblem(
                Practice.FOLDER + name + ".yaml",
                0,
                "The file is missing, and the computing needs it.",
                "Take it over from the book that came with the program."));
      }
    }
  }

  /** Makes the names these files define known, before anything is checked against them. */
  void define() {
    define("traits", "traits", "");
    define("circumstances", "circumstances", "");
    define("stages", "order", "/stages");
    define("areas", "areas", "");
    define("urgency", "order", "/urgency");
  }

  private void define(String kind, String file, String pointer) {
    if (files.containsKey(file)) {
      names.add(kind, files.get(file), pointer);
    }
  }

  void run() {
    for (String kind : List.of("causes", "adjustments")) {
      names.entries(kind).values().forEach(entry -> stage(entry));
    }
    for (Entry circumstance : names.entries("circumstances").values()) {
      JsonNode id = circumstance.node().path("id");
      known(
          id.asText(),
          "circumstance that requests can say",
          words.circumstances(),
          circumstance.written(),
          circumstance.pointer() + "/id");
    }
    words.circumstances().stream()
        .filter(id -> !names.ids("circumstances").contains(id))
        .forEach(
            id ->
                missing(
                    "circumstances",
                    "The circumstance " + id + " is missing; requests can say it."));
    if (files.containsKey("sizing")) {
      sizing(files.get("sizing"));
    }
    names.entries("areas").values().forEach(this::area);
    if (files.containsKey("drawings")) {
      new DrawingsCheck(files.get("drawings"), null, names, problems).run();
    }
  }

  /** An area names areas and causes of the catalog. */
  private void area(Entry area) {
    Set<String> areas = new HashSet<>();
    names
        .entries("causes")
        .values()
        .forEach(cause -> areas.add(cause.node().path("area").asText()));
    all(area, "areas", "area of a cause", areas);
    all(area, "causes", "cause", names.ids("causes"));
  }

  private void all(Entry entry, String field, String what, Collection<String> known) {
    for (int i = 0; i < entry.node().path(field).size(); i++) {
      String id = entry.node().path(field).get(i).asText();
      known(id, what, known, entry.written(), entry.pointer() + "/" + field + "/" + i);
    }
  }

  private void stage(Entry entry) {
    JsonNode stage = entry.node().path("stage");
    if (stage.isTextual()) {
      known(
          stage.textValue(),
          "stage of the order of work",
          names.ids("stages"),
          entry.written(),
          entry.pointer() + "/stage");
    }
  }

  private void known(
      String id, String what, Collection<String> known, Written file, String pointer) {
    names.known(
        id, what, known, file.file(), file.line(pointer), "Write a " + what + " of this book.");
  }

  private void missing(String file, String problem) {
    problems.add(new BookProblem(Practice.FOLDER + file + ".yaml", 0, problem, "Write it again."));
  }

  /** Where a caution asks for room, nothing may come out tight; a book cannot choose otherwise. */
  private void sizing(Written file) {
    List<String> there = new ArrayList<>();
    for (int i = 0; i < file.tree().path("between").size(); i++) {
      String pointer = "/between/" + i;
      JsonNode line = file.tree().at(pointer);
      String when = line.path("when").asText();
      if (when.equals("room") && (i > 0 || !line.path("take").asText().equals("larger"))) {
        problems.add(
            file.problem(
                pointer + "/take",
                "Where a caution asks for room, another size could be taken than the larger.",
                "Write \"room\" first, with take: larger."));
      }
      there.add(when);
      known(line.path("says").asText(), "sentence", sentences, file, pointer + "/says");
    }
    for (int i = 0; i < file.tree().path("measureAgain").size(); i++) {
      String pointer = "/measureAgain/" + i;
      known(
          file.tree().at(pointer).asText(), "sign", names.entries("signs").keySet(), file, pointer);
    }
    file.tree()
        .path("steps")
        .properties()
        .forEach(
            step ->
                known(
                    step.getValue().asText(),
                    "adjustment",
                    names.ids("adjustments"),
                    file,
                    "/steps/" + step.getKey()));
    List.of("room", "compression", "shaped", "unknown").stream()
        .filter(when -> !there.contains(when))
        .forEach(when -> missing("sizing", "The situation " + when + " is missing."));
  }
}
