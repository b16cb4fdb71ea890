package easewright.rulebook;

import easewright.rulebook.MutedConclusions.Said;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Something taken out of the book.
 *
 * @param part what is taken out
 * @param rule the rule it is taken out of
 * @param file where that stands, in the book's folder
 * @param line the line of the part, or of the rule, from 1
 * @param text the line taken out, or "" for the whole rule
 * @param call what a consequence calls, or ""
 * @param standsIn key of the same rule without this condition, or ""
 */
record BookMutation(
    Part part, RuleText rule, String file, int line, String text, String call, String standsIn) {
  enum Part {
    RULE,
    CONDITION,
    CONSEQUENCE
  }

  private static final String ANY = "in any fitting";

  /** What names it, wherever its line moves to. */
  String id() {
    return text.isEmpty() ? rule.name() : rule.name() + " | " + text;
  }

  boolean always() {
    return conditions(rule).contains(ANY);
  }

  /** Whether a book without this part still hears what a rule says. */
  boolean hears(Said said) {
    if (said.rule().contains(STAND_IN)) {
      return said.rule().equals(standsIn);
    }
    if (!said.rule().equals(rule.key())) {
      return true;
    }
    return part == Part.CONSEQUENCE && !said.call().equals(call);
  }

  static final String STAND_IN = "-without/";

  static List<String> conditions(RuleText rule) {
    return lines(rule, "when", "then");
  }

  static List<String> consequences(RuleText rule) {
    return lines(rule, "then", null);
  }

  private static List<String> lines(RuleText rule, String after, String before) {
    List<String> lines = rule.body().lines().map(String::strip).toList();
    return lines
        .subList(lines.indexOf(after) + 1, before == null ? lines.size() : lines.indexOf(before))
        .stream()
        .filter(line -> !line.isEmpty() && !line.startsWith("#") && !line.startsWith("//"))
        .toList();
  }

  /** Everything that can be taken out, and a book that also holds each rule without a condition. */
  record All(List<BookMutation> mutations, RuleBookSource withStandIns) {}

  static All of(RuleBookSource book) {
    Vocabulary vocabulary = Vocabulary.of(book.vocabulary());
    List<BookMutation> all = new ArrayList<>();
    List<RuleText> rules = new ArrayList<>(book.rules());
    Map<String, String> files = new LinkedHashMap<>(book.files());
    Map<String, Integer> standIns = new LinkedHashMap<>();
    for (RuleText rule : book.rules()) {
      String file = book.pages().get(rule.file()).path().replaceFirst("md$", "dslr");
      List<String> lines = book.files().get(rule.file()).lines().toList();
      all.add(new BookMutation(Part.RULE, rule, file, rule.line(), "", "", ""));
      for (String text : consequences(rule)) {
        String call = MutedConclusions.call(vocabulary.said(text, false).orElseThrow(), text);
        all.add(
            new BookMutation(
                Part.CONSEQUENCE, rule, file, line(lines, rule, text), text, call, ""));
      }
      for (String text : conditions(rule)) {
        if (!text.equals(ANY)) {
          String group = rule.file() + STAND_IN.replace("/", "");
          RuleText without = without(rule, text, group, standIns, vocabulary);
          rules.add(without);
          files.merge(group, written(without), String::concat);
          all.add(
              new BookMutation(
                  Part.CONDITION, rule, file, line(lines, rule, text), text, "", without.key()));
        }
      }
    }
    return new All(
        all,
        new RuleBookSource(
            book.family(),
            book.version(),
            book.hash(),
            book.families(),
            book.vocabulary(),
            book.catalog(),
            book.parameters(),
            rules,
            files,
            book.pages(),
            book.wording(),
            book.everyday()));
  }

  private static RuleText without(
      RuleText rule,
      String condition,
      String group,
      Map<String, Integer> standIns,
      Vocabulary vocabulary) {
    List<String> left = new ArrayList<>(conditions(rule));
    left.remove(condition);
    String body =
        "when\n" + String.join("\n", left) + "\nthen\n" + String.join("\n", consequences(rule));
    int number = standIns.merge(group, 1, Integer::sum) - 1;
    return new RuleText(
        rule.file(),
        rule.folder(),
        rule.topic(),
        group + "/" + number,
        rule.name(),
        rule.summary(),
        rule.source(),
        rule.since(),
        vocabulary.comparisons(body),
        rule.line(),
        body);
  }

  private static String written(RuleText rule) {
    return "rule \"" + rule.name() + "\"\n" + rule.body() + "\nend\n\n";
  }

  private static int line(List<String> lines, RuleText rule, String text) {
    for (int i = rule.line(); i < lines.size(); i++) {
      if (lines.get(i).strip().equals(text)) {
        return i + 1;
      }
    }
    throw new IllegalStateException(rule.name() + " has no line " + text);
  }
}
