package easewright.handbook;

import java.util.List;

/**
 * Something the rules link with the page's subject.
 *
 * @param to what it is
 * @param word how often or how much in any fitting; null when only special situations say it
 * @param special what special situations say instead
 */
public record Related(PageLink to, String word, List<Special> special) {
  /**
   * What is said in a special situation.
   *
   * @param word how often or how much; empty when the sentence has no such word
   * @param situation the rule's situation
   * @param summary why, in the rule's sentence
   */
  public record Special(String word, String situation, String summary) {}
}
