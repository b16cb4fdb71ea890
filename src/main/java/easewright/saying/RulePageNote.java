package easewright.saying;

import easewright.rulebook.RulePage;
import easewright.rulebook.RuleText;
import java.util.Collection;
import java.util.List;

/** A page of the rule book with its rules, in the contract's form. */
public record RulePageNote(
    String id, String title, String topic, String text, List<RuleNote> rules) {

  /** A page in a list. */
  public record RuleEntry(String id, String title, String topic, String page) {
    /** The entry of a page. */
    public static RuleEntry of(RulePage page) {
      return new RuleEntry(page.id(), page.title(), page.topic(), "/rules/" + page.id());
    }
  }

  /** A rule as it is written. */
  public record RuleNote(String name, String summary, String source, String since, String text) {
    private static RuleNote of(RuleText rule) {
      return new RuleNote(rule.name(), rule.summary(), rule.source(), rule.since(), rule.body());
    }
  }

  /**
   * A page with the rules of its file.
   *
   * @param rules every rule of the book
   */
  public static RulePageNote of(RulePage page, Collection<RuleText> rules) {
    return new RulePageNote(
        page.id(),
        page.title(),
        page.topic(),
        page.markdown(),
        rules.stream().filter(rule -> rule.file().equals(page.id())).map(RuleNote::of).toList());
  }
}
