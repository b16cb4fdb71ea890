package easewright.rulebook;

import easewright.rulebook.ComparisonReader.Compared;
import easewright.rulebook.RuleText.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sentences a rule may use, as {@code vocabulary.dsl} lists them, each with what it becomes.
 * Whatever must be known about a sentence is taken from here, so that a new sentence needs no
 * second entry elsewhere.
 */
public final class Vocabulary {
  private static final String FILE = "vocabulary.dsl";
  private static final Pattern LINE = Pattern.compile("^\\[(when|then)](.+?)=(\\S.*)$");
  private static final Pattern BLANK = Pattern.compile("\"\\{(\\w+)}\"");
  private static final Pattern LIMIT = Pattern.compile("parameter\\(\"([^\"]+)\"\\)");
  private static final Pattern LIMIT_ANYWHERE = Pattern.compile("\\bparameter\\s*\\(");
  private static final Pattern BLANK_WITHIN = Pattern.compile("\\{(\\w+)}");
  private static final Pattern NUMBERED = Pattern.compile("\\d+$");
  private static final String REMEDY =
      " Write Figure(id == \"{figure}\", value < parameter(\"{limit}\")) with <, >, <= or >=; a second"
          + " limit is called {limit2}.";

  private final List<Sentence> sentences;

  private Vocabulary(List<Sentence> sentences) {
    this.sentences = List.copyOf(sentences);
  }

  /**
   * One sentence.
   *
   * @param line its line in the file, from 1
   * @param when whether it states a condition; else it states what follows
   * @param words the sentence, its blanks as "{kind}"
   * @param blanks the name of each blank, in turn: "sign", "cause", "limit", "limit2" …
   * @param becomes what the engine reads in its place
   * @param compares the numbers it compares, with blanks for what a rule fills in
   */
  public record Sentence(
      int line,
      boolean when,
      String words,
      List<String> blanks,
      String becomes,
      List<Comparison> compares,
      Pattern pattern) {

    /** What fills the blanks if a line of a rule says this sentence. */
    public Optional<List<String>> filled(String text) {
      Matcher matcher = pattern.matcher(text.strip());
      if (!matcher.matches()) {
        return Optional.empty();
      }
      List<String> names = new ArrayList<>();
      for (int i = 1; i <= matcher.groupCount(); i++) {
        names.add(matcher.group(i));
      }
      return Optional.of(names);
    }

    /** The kinds of the blanks: "limit" for {@code {limit}} and {@code {limit2}}. */
    public List<String> kinds() {
      return blanks.stream().map(blank -> NUMBERED.matcher(blank).replaceFirst("")).toList();
    }
  }

  /**
   * Reads the sentences.
   *
   * @throws RuleBookFault naming the line of a sentence that compares a number in a way from which
   *     the comparison cannot be told
   */
  public static Vocabulary of(String text) {
    List<Sentence> sentences = new ArrayList<>();
    List<String> lines = text.lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      Matcher matcher = LINE.matcher(lines.get(i));
      if (matcher.matches()) {
        sentences.add(
            sentence(
                i + 1,
                matcher.group(1).equals("when"),
                matcher.group(2),
                matcher.group(3).strip()));
      }
    }
    return new Vocabulary(sentences);
  }

  private static Sentence sentence(int line, boolean when, String words, String becomes) {
    List<String> blanks = new ArrayList<>();
    StringBuilder pattern = new StringBuilder();
    Matcher blank = BLANK.matcher(words);
    int done = 0;
    while (blank.find()) {
      blanks.add(blank.group(1));
      pattern.append(Pattern.quote(words.substring(done, blank.start()))).append("\"([^\"]+)\"");
      done = blank.end();
    }
    pattern.append(Pattern.quote(words.substring(done)));
    return new Sentence(
        line,
        when,
        words,
        List.copyOf(blanks),
        becomes,
        when ? compares(line, becomes, blanks) : nothing(line, becomes),
        Pattern.compile(pattern.toString()));
  }

  /** What the engine's parser finds compared in the right side of a sentence. */
  private static List<Comparison> compares(int line, String becomes, List<String> blanks) {
    if (Set.copyOf(blanks).size() < blanks.size()) {
      throw fault(line, "two blanks have one name");
    }
    List<Comparison> compares = new ArrayList<>();
    try {
      for (Compared one : ComparisonReader.of(becomes)) {
        Matcher limit = LIMIT.matcher(one.limit());
        if (!limit.matches()) {
          throw fault(line, "it compares with \"" + one.limit() + "\", which is no parameter");
        }
        compares.add(new Comparison(one.figure(), one.how(), limit.group(1)));
      }
    } catch (ComparisonReader.Unclear unclear) {
      throw fault(line, unclear.why());
    }
    if (LIMIT_ANYWHERE.matcher(becomes).results().count() != compares.size()) {
      throw fault(line, "it names a parameter and compares no figure with it");
    }
    for (String blank : blanks) {
      if (NUMBERED.matcher(blank).replaceFirst("").equals("limit")
          && compares.stream().noneMatch(one -> one.parameter().contains("{" + blank + "}"))) {
        throw fault(line, "no figure is compared with its {" + blank + "}");
      }
    }
    return List.copyOf(compares);
  }

  private static List<Comparison> nothing(int line, String becomes) {
    if (LIMIT_ANYWHERE.matcher(becomes).find()) {
      throw fault(line, "it names a parameter in what follows");
    }
    return List.of();
  }

  private static RuleBookFault fault(int line, String why) {
    return new RuleBookFault(
        FILE
            + ":"
            + line
            + ": the comparison of this sentence cannot be told, so answers would not show its"
            + " limit: "
            + why
            + "."
            + REMEDY);
  }

  /** Every sentence, in the order of the file. */
  public List<Sentence> sentences() {
    return sentences;
  }

  /** The sentence that a line of a rule says, among conditions or among what follows. */
  public Optional<Sentence> said(String line, boolean when) {
    return sentences.stream()
        .filter(sentence -> sentence.when() == when && sentence.filled(line).isPresent())
        .findFirst();
  }

  /** The numbers that the conditions of a rule compare, taken from what the engine will do. */
  List<Comparison> comparisons(String body) {
    List<Comparison> comparisons = new ArrayList<>();
    for (String line : body.lines().toList()) {
      said(line, true).ifPresent(sentence -> comparisons.addAll(comparisons(sentence, line)));
    }
    return comparisons;
  }

  private static List<Comparison> comparisons(Sentence sentence, String line) {
    List<String> names = sentence.filled(line).orElseThrow();
    return sentence.compares().stream()
        .map(
            one ->
                new Comparison(
                    filled(one.figure(), sentence, names),
                    one.how(),
                    filled(one.parameter(), sentence, names)))
        .toList();
  }

  private static String filled(String id, Sentence sentence, List<String> names) {
    return BLANK_WITHIN
        .matcher(id)
        .replaceAll(blank -> RuleReader.id(names.get(sentence.blanks().indexOf(blank.group(1)))));
  }
}
