package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Checks that drawings name signs, adjustments and marks that there are, and that the marks of one
 * drawing are seen from one side. A sign without a drawing is no fault.
 */
final class DrawingsCheck {
  private final Written file;
  private final Written shared;
  private final Names names;
  private final List<BookProblem> problems;
  private final Map<String, String> views = new HashMap<>();

  /**
   * @param shared drawings whose scenes and marks these may use too; null for none
   */
  DrawingsCheck(Written file, Written shared, Names names, List<BookProblem> problems) {
    this.file = file;
    this.shared = shared;
    this.names = names;
    this.problems = problems;
  }

  void run() {
    Set<String> known = new HashSet<>(Set.of("front", "back"));
    for (Written one : shared == null ? List.of(file) : List.of(shared, file)) {
      one.tree().path("scenes").forEach(scene -> known.add(scene.path("id").asText()));
    }
    if (shared != null) {
      shared.tree().path("marks").forEach(this::seen);
    }
    int number = 0;
    for (JsonNode mark : file.tree().path("marks")) {
      seen(mark);
      known(mark.path("view").asText(), "view", known, "/marks/" + number++ + "/view");
    }
    drawings("signs", "sign", names.ids("signs"));
    drawings("changes", "adjustment", names.ids("adjustments"));
  }

  private void seen(JsonNode mark) {
    views.put(mark.path("id").asText(), mark.path("view").asText());
  }

  private void drawings(String part, String what, Collection<String> ids) {
    for (Map.Entry<String, JsonNode> drawn : file.tree().path(part).properties()) {
      String pointer = "/" + part + "/" + drawn.getKey();
      known(drawn.getKey(), what, ids, pointer);
      Set<String> seenFrom = new HashSet<>();
      for (JsonNode mark : drawn.getValue()) {
        known(mark.asText(), "mark", views.keySet(), pointer);
        seenFrom.add(views.getOrDefault(mark.asText(), ""));
      }
      seenFrom.remove("");
      if (seenFrom.size() > 1) {
        problems.add(
            new BookProblem(
                file.file(),
                file.line(pointer),
                "The marks of " + drawn.getKey() + " are seen from several sides.",
                "Keep those of one view."));
      }
    }
  }

  private void known(String id, String what, Collection<String> known, String pointer) {
    names.known(
        id, what, known, file.file(), file.line(pointer), "Write a " + what + " of this book.");
  }
}
