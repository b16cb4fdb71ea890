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
  private final Map<String, Written> families = new TreeMap<>();
  private final Collection<String> paths;
  private final List<BookProblem> problems;

  /**
   * @param yaml every readable YAML file of the book, by path
   * @param paths every file of the book
   */
  FamilyCheck(Map<String, Written> yaml, Collection<String> paths, List<BookProblem> problems) {
    yaml.forEach(
        (path, written) -> {
          if (path.endsWith("/" + Family.FILE)) {
            families.put(folder(path), written);
          }
        });
    this.paths = paths;
    this.problems = problems;
  }

  void run() {
    one();
    names();
    Set<String> homeless = new TreeSet<>();
    paths.stream()
        .filter(path -> path.endsWith(".dslr"))
        .map(FamilyCheck::folder)
        .filter(folder -> !families.containsKey(folder))
        .forEach(homeless::add);
    homeless.forEach(
        folder ->
            problems.add(
                new BookProblem(
                    folder + "/" + Family.FILE,
                    0,
                    "The folder holds rules, and nothing says of what garments.",
                    "Write the file: a name, and what such a garment is called.")));
  }

  /** One family serves whoever tells of none. */
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
  private void names() {
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
