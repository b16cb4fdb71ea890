package easewright.rulebook;

import easewright.rulebook.RuleText.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sentences a rule may use, as {@code vocabulary.dsl} lists them, each with what it becomes.
 * Whatever must be known about a sentence is taken from here, so that a new sentence needs no
 * second entry elsewhere.
 */
public final class Vocabulary {
  private static final Pattern LINE = Pattern.compile("^\\[(when|then)](.+?)=(\\S.*)$");
  private static final Pattern BLANK = Pattern.compile("\"\\{(\\w+)}\"");
  private static final Pattern COMPARING =
      Pattern.compile("id == \"\\{(\\w+)}\", value (<=?|>=?) parameter\\(\"\\{(\\w+)}\"\\)");
  private static final Pattern LIMIT = Pattern.compile("parameter\\(");
  private static final Map<String, String> OPERATORS =
      Map.of("<", "below", ">", "above", ">=", "at least", "<=", "at most");

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
   * @param blanks the kind of name in each blank, in turn: "sign", "cause", "limit" …
   * @param becomes what the engine reads in its place
   */
  public record Sentence(
      int line, boolean when, String words, List<String> blanks, String becomes, Pattern pattern) {

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

    private long limits() {
      return LIMIT.matcher(becomes).results().count();
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
    for (Sentence sentence : sentences) {
      if (sentence.limits() != COMPARING.matcher(sentence.becomes()).results().count()) {
        throw new RuleBookFault(
            "vocabulary.dsl:"
                + sentence.line()
                + ": the comparison of this sentence cannot be told, so answers would not show its"
                + " limit. Write Figure(id == \"{figure}\", value < parameter(\"{limit}\")) with <,"
                + " >, <= or >=.");
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
        line, when, words, List.copyOf(blanks), becomes, Pattern.compile(pattern.toString()));
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
    return COMPARING
        .matcher(sentence.becomes())
        .results()
        .map(
            comparing ->
                new Comparison(
                    RuleReader.id(names.get(sentence.blanks().indexOf(comparing.group(1)))),
                    OPERATORS.get(comparing.group(2)),
                    RuleReader.id(names.get(sentence.blanks().indexOf(comparing.group(3))))))
        .toList();
  }
}
