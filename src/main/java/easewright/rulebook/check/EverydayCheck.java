package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.rulebook.Family;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Looks up every name that the everyday words stand for. */
final class EverydayCheck {
  /** What a reply may say; those of two words count only in reply to a question about a danger. */
  private static final Set<String> REPLIES =
      Set.of("yes", "no", "unsure", "rather yes", "perhaps yes", "doubtful no");

  private final Names names;
  private final KnownWords words;
  private final List<Written> files;
  private final List<BookProblem> problems;

  EverydayCheck(Names names, KnownWords words, List<Written> files, List<BookProblem> problems) {
    this.names = names;
    this.words = words;
    this.files = files;
    this.problems = problems;
  }

  /** Whether it reads a file: how wearers say things, of any garment or of one family's. */
  static boolean reads(String path) {
    return path.startsWith("everyday/") || path.matches("[^/]+/" + Family.SAYINGS);
  }

  void run() {
    Set<String> signs = names.ids("signs");
    Set<String> spots = said("parts", "places");
    Set<String> ideas = said("parts", "places", "ideas");
    Set<String> denied = new LinkedHashSet<>(ideas);
    denied.addAll(said("cues"));
    for (Written file : files) {
      keys(file, "so", "sign", signs);
      keys(file, "not so", "sign", signs);
      keys(file, "rather", "sign", signs);
      values(file, "rather", "sign", signs);
      list(file, "usual", "sign", signs);
      list(file, "alone", "idea", ideas);
      list(file, "weak", "idea", ideas);
      keys(file, "fine", "part or place", spots);
      values(file, "fine", "sign", signs);
      keys(file, "none", "idea or cue", denied);
      values(file, "none", "sign", signs);
      keys(file, "changes", "adjustment", names.ids("adjustments"));
      keys(file, "trials", "adjustment", names.ids("adjustments"));
      keys(file, "beliefs", "cause", names.ids("causes"));
      keys(file, "circumstances", "circumstance", names.ids("circumstances"));
      keys(file, "danger/dangers", "sign", signs);
      keys(file, "danger/circumstances", "circumstance", names.ids("circumstances"));
      keys(file, "measurements", "measurement", words.measurements());
      keys(file, "replies", "reply", REPLIES);
      keys(file, "cues", "cue", words.cues());
      keys(file, "reader", "list of the reader", words.readerLists());
    }
    mustBeSaid("cues", "cue", words.cues());
    mustBeSaid("reader", "list", words.readerLists());
  }

  /** Reports missing names that reading needs in a section. */
  private void mustBeSaid(String section, String kind, Set<String> needed) {
    Set<String> said = said(section);
    needed.stream()
        .filter(one -> !said.contains(one))
        .map(
            one ->
                new BookProblem(
                    "everyday",
                    0,
                    "The "
                        + kind
                        + " \""
                        + one
                        + "\" is missing, and the reader of posts needs it.",
                    "Write it again under " + section + "."))
        .forEach(problems::add);
  }

  /** The names under these sections of any file. */
  private Set<String> said(String... sections) {
    Set<String> said = new LinkedHashSet<>();
    for (Written file : files) {
      for (String section : sections) {
        file.tree().path(section).fieldNames().forEachRemaining(said::add);
      }
    }
    return said;
  }

  /**
   * @param section name of a section, or names with slashes between for one within another
   */
  private void keys(Written file, String section, String what, Collection<String> known) {
    file.tree()
        .at("/" + section)
        .fieldNames()
        .forEachRemaining(name -> look(file, "/" + section + "/" + name, name, what, known));
  }

  private void values(Written file, String section, String what, Collection<String> known) {
    for (Map.Entry<String, JsonNode> entry : file.tree().path(section).properties()) {
      for (int i = 0; entry.getValue().isArray() && i < entry.getValue().size(); i++) {
        String pointer = "/" + section + "/" + entry.getKey() + "/" + i;
        look(file, pointer, entry.getValue().get(i).asText(), what, known);
      }
    }
  }

  private void list(Written file, String section, String what, Collection<String> known) {
    JsonNode list = file.tree().path(section);
    for (int i = 0; list.isArray() && i < list.size(); i++) {
      look(file, "/" + section + "/" + i, list.get(i).asText(), what, known);
    }
  }

  private void look(
      Written file, String pointer, String name, String what, Collection<String> known) {
    names.known(
        name,
        what,
        known,
        file.file(),
        file.line(pointer),
        "Write the name of a known " + what + ".");
  }
}
