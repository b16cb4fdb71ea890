package easewright.handbook;

import java.util.List;

/**
 * Something the rules relate to the page's subject.
 *
 * @param to the related item
 * @param word how often or how much in any fitting; null if only special situations state it
 * @param special what special situations state instead
 */
public record Related(PageLink to, String word, List<Special> special) {
  /**
   * A statement for a special situation.
   *
   * @param word how often or how much; empty if the sentence has no such word
   * @param situation the rule's situation
   * @param summary the reason, in the rule's sentence
   */
  public record Special(String word, String situation, String summary) {}
}
