package easewright.rulebook;

import easewright.rulebook.ComparisonReader.Compared;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Checks that the comparisons that answers show for each rule are those the engine will make: a
 * rule file may do more than its sentences say, through lines that the vocabulary covers only in
 * part.
 */
final class ShownComparisons {
  private final RuleBookSource source;
  private final Map<String, RuleText> rules;

  ShownComparisons(RuleBookSource source) {
    this.source = source;
    this.rules =
        source.rules().stream().collect(Collectors.toMap(RuleText::key, Function.identity()));
  }

  /**
   * Checks a file as the engine compiles it, its parameters put in as numbers.
   *
   * @throws RuleBookFault with file, line and remedy
   */
  void check(String file, String drl) {
    try {
      ComparisonReader.ofRules(drl).forEach(this::check);
    } catch (ComparisonReader.Unclear unclear) {
      throw new RuleBookFault(
          file
              + ".dslr: a rule compares a number in a way that answers could not tell: "
              + unclear.why()
              + ". Write each condition as one whole sentence of the vocabulary, on its own line.");
    }
  }

  private void check(String key, List<Compared> compared) {
    RuleText rule = rules.get(key);
    List<Compared> told =
        rule.comparisons().stream()
            .map(
                one ->
                    new Compared(
                        one.figure(),
                        one.how(),
                        Double.toString(source.parameter(one.parameter()))))
            .toList();
    if (!told.equals(compared)) {
      throw new RuleBookFault(
          rule.file()
              + ".dslr:"
              + rule.line()
              + ": this rule compares a number in a sentence that does not stand whole on its line,"
              + " so answers would not show its limit. Write each condition as one whole sentence"
              + " of the vocabulary, on its own line.");
    }
  }
}
