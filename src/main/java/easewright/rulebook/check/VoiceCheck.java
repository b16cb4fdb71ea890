package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.rulebook.Voice;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Checks that replies can say every cause, change and caution, and nothing that is not there. */
final class VoiceCheck {
  private static final String FOLDER = "voice/";

  private final Names names;
  private final KnownWords words;
  private final Map<String, Written> yaml;
  private final List<BookProblem> problems;

  /**
   * @param yaml every readable YAML file of the book, by path
   */
  VoiceCheck(Names names, KnownWords words, Map<String, Written> yaml, List<BookProblem> problems) {
    this.names = names;
    this.words = words;
    this.yaml = yaml;
    this.problems = problems;
  }

  /** The schema of a file of a voice, or null where the path is none. */
  static String schema(String path) {
    return Voice.FILES.stream()
        .filter(
            file ->
                path.matches(FOLDER + "[a-z]{2,3}/" + file + "\\.yaml")
                    || Voice.OF_FAMILIES.contains(file)
                        && path.matches("[^/]+/" + FOLDER + "[a-z]{2,3}/" + file + "\\.yaml"))
        .map(file -> "voice-" + file)
        .findFirst()
        .orElse(null);
  }

  void run() {
    Set<String> languages = new LinkedHashSet<>(Set.of(Voice.USUAL));
    yaml.keySet().stream()
        .filter(path -> path.startsWith(FOLDER))
        .map(path -> path.split("/")[1])
        .forEach(languages::add);
    languages.forEach(this::language);
  }

  private void language(String language) {
    String folder = FOLDER + language + "/";
    said(folder + "causes.yaml", "cause", names.ids("causes"));
    said(folder + "changes.yaml", "adjustment", names.ids("adjustments"));
    said(folder + "cautions.yaml", "caution", names.ids("cautions"));
    said(folder + "phrases.yaml", "phrase of replies", words.phrases());
    signs(folder + "questions.yaml");
    signs(folder + "clues.yaml");
    shown(folder + "changes.yaml");
    Written talk = yaml.get(folder + "talk.yaml");
    if (talk == null) {
      missing(folder + "talk.yaml");
      return;
    }
    list(talk, "/then", names.ids("adjustments"), "adjustment");
    list(talk, "/roomier", names.ids("adjustments"), "adjustment");
    list(talk, "/nextOne", names.ids("adjustments"), "adjustment");
    list(talk, "/oneSided", names.ids("adjustments"), "adjustment");
    list(talk, "/tests", names.ids("signs"), "sign");
    lists(talk, "/directions", names.ids("adjustments"), "adjustment");
    lists(talk, "/presupposes", names.ids("signs"), "sign");
    known(talk, "/presupposes", names.ids("signs"), "sign");
    for (int i = 0; i < talk.tree().path("alike").size(); i++) {
      list(talk, "/alike/" + i, names.ids("adjustments"), "adjustment");
    }
    talk.tree()
        .path("things")
        .fieldNames()
        .forEachRemaining(
            thing -> list(talk, "/things/" + thing + "/causes", names.ids("causes"), "cause"));
  }

  /** The signs that a trial is told by. */
  private void shown(String path) {
    Written file = yaml.get(path);
    if (file != null) {
      file.tree()
          .fieldNames()
          .forEachRemaining(id -> list(file, "/" + id + "/shownBy", names.ids("signs"), "sign"));
    }
  }

  private void signs(String path) {
    Written file = yaml.get(path);
    if (file == null) {
      missing(path);
      return;
    }
    known(file, "", names.ids("signs"), "sign");
  }

  private void said(String path, String what, Collection<String> needed) {
    if (!yaml.containsKey(path)) {
      missing(path);
      return;
    }
    Set<String> there = new LinkedHashSet<>();
    yaml.values().stream()
        .filter(one -> one.file().equals(path) || one.file().endsWith("/" + path))
        .forEach(
            one ->
                one.tree()
                    .fieldNames()
                    .forEachRemaining(
                        id -> {
                          there.add(id);
                          look(one, "/" + id, id, what, needed);
                        }));
    needed.stream()
        .filter(id -> !there.contains(id))
        .forEach(
            id ->
                problems.add(
                    new BookProblem(
                        path, 0, "The " + what + " " + id + " is missing.", "Write it.")));
  }

  private void known(Written file, String pointer, Collection<String> known, String what) {
    file.tree()
        .at(pointer)
        .fieldNames()
        .forEachRemaining(id -> look(file, pointer + "/" + id, id, what, known));
  }

  private void lists(Written file, String pointer, Collection<String> known, String what) {
    file.tree()
        .at(pointer)
        .fieldNames()
        .forEachRemaining(name -> list(file, pointer + "/" + name, known, what));
  }

  private void list(Written file, String pointer, Collection<String> known, String what) {
    JsonNode list = file.tree().at(pointer);
    for (int i = 0; i < list.size(); i++) {
      look(file, pointer + "/" + i, list.get(i).asText(), what, known);
    }
  }

  private void look(
      Written file, String pointer, String id, String what, Collection<String> known) {
    names.known(
        id, what, known, file.file(), file.line(pointer), "Write the id of a " + what + ".");
  }

  private void missing(String path) {
    problems.add(
        new BookProblem(
            path,
            0,
            "The file is missing, and replies need it.",
            "Take it over from the book that came with the program."));
  }
}
