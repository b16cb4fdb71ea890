package easewright.rulebook.check;

import easewright.rulebook.RuleBookFault;
import easewright.rulebook.Vocabulary;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the sentences of a book, and looks up what their blanks and strengths stand for. */
final class VocabularyCheck {
  private static final String FILE = "vocabulary.dsl";
  private static final Set<String> BLANKS =
      Set.of(
          "sign",
          "place",
          "time",
          "circumstance",
          "choice",
          "option",
          "trait",
          "adjustment",
          "other",
          "outcome",
          "figure",
          "limit",
          "finding",
          "cause",
          "caution",
          "reason");
  private static final Pattern STRENGTH =
      Pattern.compile("book\\.(?:shows|cures)\\(drools, \"\\{\\w+}\", \"([^\"{]+)\"");
  private static final Pattern PLACE = Pattern.compile("vocabulary.dsl:(\\d+): (.*?[.]) (.*)");

  private final Names names;
  private final List<BookProblem> problems;

  VocabularyCheck(Names names, List<BookProblem> problems) {
    this.names = names;
    this.problems = problems;
  }

  /** The sentences, or null where they cannot be read. */
  Vocabulary read(String text) {
    Vocabulary vocabulary;
    try {
      vocabulary = Vocabulary.of(text);
    } catch (RuleBookFault fault) {
      Matcher place = PLACE.matcher(fault.getMessage());
      if (place.matches()) {
        problem(Integer.parseInt(place.group(1)), place.group(2), place.group(3));
      } else {
        problem(0, fault.getMessage(), "");
      }
      return null;
    }
    Set<Integer> understood = new HashSet<>();
    for (Vocabulary.Sentence sentence : vocabulary.sentences()) {
      understood.add(sentence.line());
      sentence(sentence);
    }
    List<String> lines = text.lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      if (!lines.get(i).isBlank() && !lines.get(i).startsWith("#") && !understood.contains(i + 1)) {
        problem(
            i + 1,
            "This is no sentence.",
            "Write [when] or [then], the sentence, = and what it becomes, in one line.");
      }
    }
    return vocabulary;
  }

  private void sentence(Vocabulary.Sentence sentence) {
    for (String blank : sentence.kinds()) {
      if (!BLANKS.contains(blank)) {
        problem(
            sentence.line(),
            "The blank {" + blank + "} is of no known kind.",
            "Known are: " + String.join(", ", new TreeSet<>(BLANKS)) + ".");
      }
    }
    Matcher strength = STRENGTH.matcher(sentence.becomes());
    while (strength.find()) {
      names.known(
          strength.group(1),
          "parameter",
          names.ids("parameters"),
          FILE,
          sentence.line(),
          "Add it to parameters/words.yaml.");
    }
  }

  private void problem(int line, String problem, String remedy) {
    problems.add(new BookProblem(FILE, line, problem, remedy));
  }
}
