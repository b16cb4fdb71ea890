package easewright.rulebook.check;

import easewright.rulebook.Catalog;
import easewright.rulebook.Vocabulary;
import easewright.rulebook.Vocabulary.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads rule files line by line: their form, their sentences, and every name in them. */
final class RuleFileCheck {
  private static final Pattern RULE = Pattern.compile("rule \"([^\"]+)\"\\s*");
  private static final Pattern NOTE = Pattern.compile("\\s*@(\\w+)\\(\"(.*)\"\\)\\s*");
  private static final String NO_TIGHTENING = "advise no tightening";
  private static final List<String> NOTES = List.of("summary", "source", "since");

  private final Names names;
  private final KnownWords words;
  private final Vocabulary vocabulary;
  private final Collection<String> figures;
  private final List<BookProblem> problems;
  private final Map<String, String> rules = new HashMap<>();
  private final Set<String> comparing = new HashSet<>();

  private String file;
  private String id;
  private int line;
  private boolean cautions;

  RuleFileCheck(
      Names names,
      KnownWords words,
      Vocabulary vocabulary,
      Collection<String> figures,
      List<BookProblem> problems) {
    this.names = names;
    this.words = words;
    this.vocabulary = vocabulary;
    this.figures = figures;
    this.problems = problems;
  }

  /** Whether a file compares a number, so that its page needs a case on the boundary. */
  boolean compares(String fileId) {
    return comparing.contains(fileId);
  }

  void run(String path, String fileId, String text) {
    file = path;
    id = fileId;
    line = 0;
    String part = "";
    int rulesSeen = 0;
    Set<String> notes = new HashSet<>();
    for (String written : text.lines().toList()) {
      line++;
      String words = written.strip();
      if (words.isEmpty() || words.startsWith("#") || words.startsWith("//")) {
        continue;
      }
      Matcher rule = RULE.matcher(written);
      if (rule.matches()) {
        ends(part, "");
        rulesSeen++;
        name(rule.group(1));
        part = "rule";
        notes.clear();
      } else if (part.equals("rule") && words.startsWith("@")) {
        note(written, notes);
      } else if (words.equals("when")) {
        follows(part, "rule", words);
        NOTES.stream()
            .filter(note -> !notes.contains(note))
            .forEach(
                note -> problem("The rule has no @" + note + ".", "Write it before \"when\"."));
        part = "when";
      } else if (words.equals("then")) {
        follows(part, "when", words);
        part = "then";
        cautions = false;
      } else if (words.equals("end")) {
        follows(part, "then", words);
        part = "";
      } else if (part.equals("when") || part.equals("then")) {
        sentence(words, part.equals("when"));
      } else {
        problem(
            "This line stands outside the conditions and consequences of a rule.",
            "A rule is: rule \"name: situation\", @summary, @source, @since, when, then, end.");
      }
    }
    ends(part, "");
    if (rulesSeen == 0) {
      problem("The file holds no rule.", "Write one, or delete the file and its page.");
    }
  }

  private void name(String name) {
    if (!name.contains(":") || !Catalog.idOf(name.split(":", 2)[0]).equals(id)) {
      problem(
          "The rule \"" + name + "\" is not named after its file.",
          "Name it \"" + id.replace('-', ' ') + ": \" and the situation.");
    }
    String first = rules.putIfAbsent(name, file + ":" + line);
    if (first != null) {
      problem("The rule \"" + name + "\" stands twice; first at " + first + ".", "Rename one.");
    }
  }

  private void note(String written, Set<String> notes) {
    Matcher note = NOTE.matcher(written);
    if (!note.matches() || !NOTES.contains(note.group(1)) || note.group(2).isBlank()) {
      problem(
          "This note cannot be read: " + written.strip(),
          "Write @summary(\"…\"), @source(\"…\") or @since(\"2026-11\").");
      return;
    }
    notes.add(note.group(1));
  }

  private void follows(String part, String needed, String word) {
    if (!part.equals(needed)) {
      problem(
          "\""
              + word
              + "\" stands where "
              + (part.isEmpty() ? "no rule is open" : "\"" + part + "\" is still open")
              + ".",
          "A rule is: rule \"name: situation\", @summary, @source, @since, when, then, end.");
    }
  }

  private void ends(String part, String needed) {
    if (!part.equals(needed)) {
      problem("The rule before this line has no \"end\".", "Close it with a line that says end.");
    }
  }

  private void sentence(String words, boolean when) {
    if (words.replaceAll("\"[^\"]*\"", "").chars().anyMatch(Character::isDigit)) {
      problem(
          "The sentence holds a bare number: " + words,
          "Name a parameter, and give it its number and source in parameters/.");
      return;
    }
    Optional<Sentence> said = vocabulary.said(words, when);
    if (said.isEmpty()) {
      problem("The vocabulary has no sentence \"" + words + "\".", nearest(words, when));
      return;
    }
    List<String> filled = said.get().filled(words).orElseThrow();
    List<String> ids = filled.stream().map(Catalog::idOf).toList();
    List<String> blanks = said.get().kinds();
    for (int i = 0; i < ids.size(); i++) {
      blank(blanks.get(i), ids, blanks, ids.get(i), when);
    }
    if (!said.get().compares().isEmpty()) {
      comparing.add(id);
    }
    cautions |= blanks.contains("caution");
    if (said.get().words().equals(NO_TIGHTENING) && !cautions) { // sizes and plans go by it
      problem("The rule stops all tightening unnamed.", "First show the caution it stops it for.");
    }
  }

  private void blank(
      String kind, List<String> ids, List<String> blanks, String name, boolean when) {
    switch (kind) {
      case "sign" ->
          look(
              name,
              when ? "sign" : "sign or finding",
              when ? names.ids("signs") : names.ids("signs", "findings"));
      case "place" -> place(name, ids, blanks);
      case "circumstance" -> look(name, kind, names.ids("circumstances"));
      case "trait" -> look(name, "trait of a pattern", names.ids("traits"));
      case "choice" -> look(name, "choice of a pattern", words.choices().keySet());
      case "option" -> {
        int choice = blanks.indexOf("choice");
        List<String> options = choice < 0 ? null : words.choices().get(ids.get(choice));
        if (options != null) {
          look(name, "option of this choice", options);
        }
      }
      case "adjustment", "other" -> look(name, "adjustment", names.ids("adjustments"));
      case "time" -> look(name, "time", KnownWords.TIMES);
      case "outcome" -> look(name, "outcome", KnownWords.OUTCOMES);
      case "figure" -> look(name, "figure", figures);
      case "limit" -> look(name, "parameter", names.ids("parameters"));
      case "finding" -> look(name, kind, names.ids("findings"));
      case "cause" -> look(name, kind, names.ids("causes"));
      case "caution" -> look(name, kind, names.ids("cautions"));
      case "reason" -> look(name, "reason", names.ids("reasons"));
      default -> {} // the vocabulary itself is reported
    }
  }

  private void place(String name, List<String> ids, List<String> blanks) {
    int sign = blanks.indexOf("sign");
    Names.Entry entry = sign < 0 ? null : names.entries("signs").get(ids.get(sign));
    if (entry != null) {
      List<String> places = new ArrayList<>();
      entry.node().path("where").forEach(place -> places.add(place.asText()));
      look(name, "place of this sign", places);
    }
  }

  private void look(String name, String what, Collection<String> known) {
    names.known(name, what, known, file, line, "Write the name of a known " + what + ".");
  }

  /** The sentence that shares most words, with its blanks. */
  private String nearest(String words, boolean when) {
    Set<String> said = bare(words);
    String best = null;
    double most = 0;
    for (Sentence sentence : vocabulary.sentences()) {
      if (sentence.when() == when) {
        Set<String> shared = bare(sentence.words());
        int all = shared.size() + said.size();
        shared.retainAll(said);
        double share = 2.0 * shared.size() / all;
        if (share > most) {
          most = share;
          best = sentence.words();
        }
      }
    }
    return best == null
        ? "Write one of the sentences of vocabulary.dsl."
        : "The nearest is: " + best + ".";
  }

  private static Set<String> bare(String words) {
    return new HashSet<>(Arrays.asList(words.replaceAll("\"[^\"]*\"", "_").split("\\s+")));
  }

  private void problem(String problem, String remedy) {
    problems.add(new BookProblem(file, line, problem, remedy));
  }
}
