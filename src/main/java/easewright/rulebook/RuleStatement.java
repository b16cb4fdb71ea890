package easewright.rulebook;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One sentence of a rule that links two names of the catalog. Extracted from the rule's text, so it
 * is found in a book that is not compiled, and where a run would not fire the rule.
 *
 * @param subject id of the first name
 * @param word how much or how often, such as "usually" or "largely"; "" where the kind has none
 * @param object id of the second name
 * @param rule the rule that says it
 */
public record RuleStatement(Kind kind, String subject, String word, String object, RuleText rule) {

  private static final String NAME = "\"([^\"]+)\"";

  /** The kinds of sentence that link two names. */
  public enum Kind {
    /** A cause shows as a sign. */
    SHOWS(NAME + " (nearly always|usually|often|sometimes|rarely|never) shows as " + NAME),
    /** A change cures a cause. */
    CURES(NAME + " (fully|largely|partly) cures " + NAME),
    /** A change worsens a sign or a cause. */
    WORSENS(NAME + "( )worsens " + NAME),
    /** A change is held back because of a cause or a finding. */
    HOLDS_BACK("hold back " + NAME + "( )because " + NAME),
    /** One change is put in place of another. */
    REPLACES("put " + NAME + "( )in place of " + NAME);

    private final Pattern sentence;

    Kind(String sentence) {
      this.sentence = Pattern.compile("^\\s*" + sentence + "\\s*$", Pattern.MULTILINE);
    }
  }

  /** Every sentence of one kind, in the order of the rules. */
  public static Stream<RuleStatement> of(Kind kind, List<RuleText> rules) {
    return rules.stream()
        .flatMap(
            rule ->
                kind.sentence
                    .matcher(rule.body())
                    .results()
                    .map(
                        found ->
                            new RuleStatement(
                                kind,
                                Catalog.idOf(found.group(1)),
                                found.group(2).strip(),
                                Catalog.idOf(found.group(3)),
                                rule)));
  }

  /** The situation in which the rule says it, as the rule's name has it. */
  public String situation() {
    return rule.name().split(":", 2)[1].strip();
  }
}
