package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.naming.NearestName;
import easewright.rulebook.Catalog;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The ids a book defines, by kind, and what is wrong with a name that none of them is. */
final class Names {
  private final Map<String, Map<String, Entry>> byKind = new LinkedHashMap<>();
  private final List<BookProblem> problems;

  Names(List<BookProblem> problems) {
    this.problems = problems;
  }

  /** Where an id is defined, and all that is said there. */
  record Entry(Written written, String pointer, JsonNode node) {
    BookProblem problem(String field, String problem, String remedy) {
      return written.problem(pointer + "/" + field, problem, remedy);
    }
  }

  /** Adds the entries of a file: a list of objects with ids. */
  void add(String kind, Written written) {
    add(kind, written, "");
  }

  /** Adds the entries of a list within a file, named by its JSON Pointer. */
  void add(String kind, Written written, String list) {
    Map<String, Entry> known = byKind.computeIfAbsent(kind, k -> new LinkedHashMap<>());
    JsonNode entries = written.tree().at(list);
    for (int i = 0; entries.isArray() && i < entries.size(); i++) {
      JsonNode node = entries.get(i);
      String id = node.path("id").asText("");
      if (id.isEmpty()) {
        continue; // the schema reports it
      }
      Entry entry = new Entry(written, list + "/" + i, node);
      Entry first = known.putIfAbsent(id, entry);
      if (first != null) {
        problems.add(
            entry.problem(
                "id",
                "The id " + id + " stands twice; first at " + at(first) + ".",
                "Rename or delete one of the two."));
      }
      String name = node.path("name").asText("");
      if (!name.isEmpty() && !Catalog.idOf(name).equals(id)) {
        problems.add(
            entry.problem(
                "name",
                "The name \"" + name + "\" does not spell the id " + id + ".",
                "Make it \""
                    + id.replace('-', ' ')
                    + "\", or make the id "
                    + Catalog.idOf(name)
                    + "."));
      }
    }
  }

  private static String at(Entry entry) {
    return entry.written().file() + ":" + entry.written().line(entry.pointer());
  }

  Set<String> ids(String... kinds) {
    Set<String> ids = new LinkedHashSet<>();
    for (String kind : kinds) {
      ids.addAll(entries(kind).keySet());
    }
    return ids;
  }

  Map<String, Entry> entries(String kind) {
    return byKind.getOrDefault(kind, Map.of());
  }

  /** Whether an id is among the known ones; else a problem is noted with the nearest of them. */
  boolean known(
      String id, String what, Collection<String> known, String file, int line, String remedyElse) {
    if (known.contains(id)) {
      return true;
    }
    String remedy =
        NearestName.to(id, known)
            .map(near -> "Did you mean \"" + near + "\"?")
            .orElse(
                known.size() <= 20
                    ? "Known are: " + NearestName.listed(new ArrayList<>(known)) + "."
                    : remedyElse);
    problems.add(new BookProblem(file, line, "\"" + id + "\" is no " + what + ".", remedy));
    return false;
  }
}
