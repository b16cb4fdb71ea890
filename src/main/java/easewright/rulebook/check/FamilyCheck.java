package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.rulebook.Family;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Checks which families a book has, what they are called, and that every rule is of one. */
final class FamilyCheck {
  /** Kinds of entries that need no rules to say whose they are. */
  private static final List<String> UNRULED = List.of("signs", "adjustments");

  private static final String[] ENTRIES = {
    "signs", "causes", "findings", "adjustments", "cautions", "reasons"
  };

  /** Which entries of the catalog the files of a voice speak of. */
  private static final Map<String, String> SPOKEN =
      Map.of(
          "causes", "causes",
          "changes", "adjustments",
          "cautions", "cautions",
          "questions", "signs",
          "clues", "signs");

  private final Names names;
  private final KnownWords words;
  private final Map<String, Written> yaml;
  private final Map<String, Written> families = new TreeMap<>();
  private final Map<String, String> texts;
  private final Collection<String> paths;
  private final List<BookProblem> problems;

  /**
   * @param yaml every readable YAML file of the book, by path
   * @param texts every file of the book, by path
   */
  FamilyCheck(
      Names names,
      KnownWords words,
      Map<String, Written> yaml,
      Map<String, String> texts,
      List<BookProblem> problems) {
    this.names = names;
    this.words = words;
    this.yaml = yaml;
    yaml.forEach(
        (path, written) -> {
          if (path.endsWith("/" + Family.FILE)) {
            families.put(folder(path), written);
          }
        });
    this.texts = texts;
    this.paths = texts.keySet();
    this.problems = problems;
  }

  void run() {
    one();
    called();
    Set<String> shared = new TreeSet<>();
    Set<String> homeless = new TreeSet<>();
    for (String path : paths) {
      if (path.matches(Family.COMMON + "[^/]+/.*\\.dslr")) {
        shared.add(path.substring(0, path.indexOf('/', Family.COMMON.length())));
      } else if (path.endsWith(".dslr") && !families.containsKey(folder(path))) {
        homeless.add(folder(path));
      }
    }
    homeless.forEach(
        folder ->
            problems.add(
                new BookProblem(
                    folder + "/" + Family.FILE,
                    0,
                    "The folder holds rules, and nothing says of what garments.",
                    "Write the file: a name, and what such a garment is called.")));
    families.values().forEach(family -> includes(family, shared));
    families.values().forEach(this::instead);
    families.forEach((id, family) -> MeasuresCheck.run(id, family, yaml, names, words, problems));
    families.forEach(
        (id, family) -> new FamilyDrawingsCheck(id, yaml, texts, names, problems).run(family));
    catalog(shared);
  }

  /** Shared folders must be there; one with a danger is heard in every family. */
  private void includes(Written family, Set<String> shared) {
    Set<String> included = new TreeSet<>();
    JsonNode list = family.tree().path("includes");
    for (int i = 0; i < list.size(); i++) {
      included.add(list.get(i).asText());
      names.known(
          list.get(i).asText(),
          "shared folder with rules",
          shared,
          family.file(),
          family.line("/includes/" + i),
          "Name a folder under " + Family.COMMON + ".");
    }
    names
        .entries("cautions")
        .forEach(
            (id, caution) ->
                shared.stream()
                    .filter(folder -> caution.node().path("urgency").asText().equals("stop"))
                    .filter(folder -> paths.contains(folder + "/" + id + ".dslr"))
                    .filter(folder -> !included.contains(folder))
                    .forEach(
                        folder ->
                            problems.add(
                                family.problem(
                                    "/includes",
                                    "The dangers of " + folder + " are not heard in this family.",
                                    "Add " + folder + " to its includes."))));
  }

  /** Words in place of shared ones must stand for something. */
  private void instead(Written family) {
    known(family, "/instead/catalog", "entry of the catalog", names.ids(ENTRIES));
    known(family, "/instead/wording", "sentence", words.sentences());
    SPOKEN.forEach(
        (file, kind) ->
            known(family, "/instead/voice/" + file, kind + " of the book", names.ids(kind)));
    known(family, "/instead/voice/phrases", "phrase of replies", words.phrases());
  }

  private void known(Written family, String pointer, String what, Collection<String> known) {
    family
        .tree()
        .at(pointer)
        .fieldNames()
        .forEachRemaining(
            id ->
                names.known(
                    id,
                    what,
                    known,
                    family.file(),
                    family.line(pointer + "/" + id),
                    "Name one that all families share."));
  }

  /** Each sign and adjustment is of a shared folder or of one family. */
  private void catalog(Set<String> shared) {
    Set<String> whose = new TreeSet<>(families.keySet());
    whose.addAll(shared);
    for (String kind : UNRULED) {
      Set<String> files = new TreeSet<>();
      names
          .entries(kind)
          .values()
          .forEach(
              entry -> {
                if (entry.node().has("of")) {
                  names.known(
                      entry.node().path("of").asText(),
                      "family or shared folder",
                      whose,
                      entry.written().file(),
                      entry.written().line(entry.pointer() + "/of"),
                      "Name the folder of a family, or a shared one.");
                }
                files.add(entry.written().file());
              });
      files.stream()
          .filter(file -> file.startsWith("catalog/"))
          .filter(file -> !shared.contains(Family.COMMON + nameOf(file)))
          .filter(file -> owners(nameOf(file)) != 1)
          .forEach(
              file ->
                  problems.add(
                      new BookProblem(
                          file,
                          0,
                          "Its entries are of " + owners(nameOf(file)) + " families.",
                          "Name the file under catalog in the family.yaml of one.")));
    }
  }

  private long owners(String file) {
    return families.values().stream()
        .filter(family -> family.tree().path("catalog").toString().contains("\"" + file + "\""))
        .count();
  }

  private static String nameOf(String path) {
    return path.substring(path.lastIndexOf('/') + 1, path.lastIndexOf('.'));
  }

  /** One family serves requests that name none. */
  private void one() {
    List<Written> usual =
        families.values().stream().filter(one -> one.tree().path("usual").asBoolean()).toList();
    if (usual.isEmpty()) {
      problems.add(
          new BookProblem(
              Family.FILE,
              0,
              "No family serves requests that tell of none.",
              "Write \"usual: true\" in the family.yaml of one."));
    }
    usual.stream()
        .skip(1)
        .forEach(
            one ->
                problems.add(
                    one.problem(
                        "/usual",
                        "Another family serves requests that tell of none, too: "
                            + usual.get(0).file()
                            + ".",
                        "Delete the line in one of the two.")));
  }

  /** A word that calls two families would choose neither. */
  private void called() {
    Map<String, String> taken = new HashMap<>();
    families.forEach(
        (id, written) -> {
          JsonNode called = written.tree().path("called");
          for (int i = 0; i < called.size(); i++) {
            String other = taken.putIfAbsent(called.get(i).asText(), written.file());
            if (other != null && !other.equals(written.file())) {
              problems.add(
                  written.problem(
                      "/called/" + i,
                      "Another family is called so, too: " + other + ".",
                      "Keep the words for one of the two."));
            }
          }
        });
  }

  private static String folder(String path) {
    return path.substring(0, path.indexOf('/'));
  }
}
