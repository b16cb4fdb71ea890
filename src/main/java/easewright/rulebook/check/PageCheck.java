package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.naming.NearestName;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads pages: their heading, their fenced cases, and every name the cases expect. */
final class PageCheck {
  private static final List<String> KINDS = List.of("speaks", "silent", "boundary");

  /** What each key of a case names. */
  private static final Map<String, String> NAMED =
      Map.ofEntries(
          Map.entry("first cause", "causes"),
          Map.entry("in play", "causes"),
          Map.entry("not in play", "causes"),
          Map.entry("raises", "causes"),
          Map.entry("lowers", "causes"),
          Map.entry("holds", "findings"),
          Map.entry("holds not", "findings"),
          Map.entry("not judged", "findings"),
          Map.entry("caution", "cautions"),
          Map.entry("stops tightening", "cautions"),
          Map.entry("no caution", "cautions"),
          Map.entry("advises", "adjustments"),
          Map.entry("advises first", "adjustments"),
          Map.entry("does not advise", "adjustments"),
          Map.entry("unexplained", "signs"));

  private final Names names;
  private final BookSchemas schemas;
  private final List<BookProblem> problems;

  PageCheck(Names names, BookSchemas schemas, List<BookProblem> problems) {
    this.names = names;
    this.schemas = schemas;
    this.problems = problems;
  }

  void run(String path, String markdown, boolean compares) {
    List<String> lines = markdown.lines().toList();
    if (lines.stream().noneMatch(line -> line.startsWith("# "))) {
      problems.add(new BookProblem(path, 1, "The page has no title.", "Begin with # and a title."));
    }
    Set<String> kinds = new HashSet<>();
    int opened = -1;
    for (int i = 0; i < lines.size(); i++) {
      if (!lines.get(i).startsWith("```")) {
        continue;
      }
      if (opened < 0) {
        opened = i;
      } else {
        fence(path, lines, opened, i, kinds);
        opened = -1;
      }
    }
    if (opened >= 0) {
      problems.add(
          new BookProblem(path, opened + 1, "This case is never closed.", "Close it with ```."));
    }
    List<String> needed = compares ? KINDS : KINDS.subList(0, 2);
    needed.stream()
        .filter(kind -> !kinds.contains(kind))
        .forEach(
            kind ->
                problems.add(
                    new BookProblem(
                        path,
                        0,
                        "The page has no case of the kind \"" + kind + "\".",
                        "Add one: ```yaml " + kind + ", then given: and then:.")));
  }

  private void fence(String path, List<String> lines, int from, int to, Set<String> kinds) {
    String info = lines.get(from).substring(3).strip();
    if (!info.startsWith("yaml")) {
      return;
    }
    String kind = info.substring("yaml".length()).strip();
    if (!KINDS.contains(kind)) {
      problems.add(
          new BookProblem(
              path,
              from + 1,
              "\"" + kind + "\" is no kind of case, so it would not be run.",
              NearestName.remedy(kind, KINDS)));
      return;
    }
    kinds.add(kind);
    String text = String.join("\n", lines.subList(from + 1, to));
    Written written = Written.read(path, from + 2, text, problems);
    if (!written.isReadable()) {
      return;
    }
    problems.addAll(schemas.problems("page-case", written));
    for (Map.Entry<String, JsonNode> expected : written.tree().path("then").properties()) {
      String kindOfName = NAMED.get(expected.getKey());
      if (kindOfName != null) {
        String pointer = "/then/" + expected.getKey();
        List<String> ids = new ArrayList<>();
        if (expected.getValue().isArray()) {
          expected.getValue().forEach(id -> ids.add(id.asText()));
        } else {
          ids.add(expected.getValue().asText());
        }
        String one = kindOfName.substring(0, kindOfName.length() - 1);
        ids.forEach(
            id ->
                names.known(
                    id,
                    one,
                    names.ids(kindOfName),
                    path,
                    written.line(pointer),
                    "Write the id of a " + one + " of this book."));
      }
    }
  }
}
