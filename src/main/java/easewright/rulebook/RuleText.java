package easewright.rulebook;

import java.util.List;

/**
 * One rule as written.
 *
 * @param file id of its file, which is the id of its page
 * @param folder whose it is: a family's id, e.g. "sports-bra", or a shared folder, e.g.
 *     "common/making"
 * @param topic folder it stands in, e.g. "band"
 * @param key what the engine calls it: file and position
 * @param name full name: id in words, colon, situation
 * @param comparisons the numbers it compares
 * @param line where it begins in its file, from 1
 * @param body its sentences
 */
public record RuleText(
    String file,
    String folder,
    String topic,
    String key,
    String name,
    String summary,
    String source,
    String since,
    List<Comparison> comparisons,
    int line,
    String body) {

  /**
   * A number compared with a parameter.
   *
   * @param figure figure id, or the adjustment id when an amount is compared
   * @param how "below", "above", "at least" or "at most"
   * @param parameter parameter id
   */
  public record Comparison(String figure, String how, String parameter) {}
}
