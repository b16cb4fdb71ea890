package easewright.rulebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/**
 * The page of one rule file.
 *
 * @param id file id
 * @param topic folder
 * @param path its file, within the rule book's folder
 * @param title first heading
 * @param markdown the whole page
 * @param cases its fenced cases, in order
 */
public record RulePage(
    String id, String topic, String path, String title, String markdown, List<RuleCase> cases) {

  /** The same with cases about one family of garments, where they name none. */
  RulePage of(String family) {
    return new RulePage(
        id, topic, path, title, markdown, cases.stream().map(one -> one.of(family)).toList());
  }

  /**
   * A case that is run as a test.
   *
   * @param kind "speaks", "silent" or "boundary"
   * @param heading the situation it stands under
   * @param line where its fence begins in the page, from 1
   * @param given a fitting in wire form
   * @param withEach what is added to it, one at a time: a part of a fitting, or the id of a sign
   *     that is seen; empty where the case is about the fitting as it is
   * @param then the required results
   */
  public record RuleCase(
      String kind,
      String heading,
      int line,
      JsonNode given,
      List<JsonNode> withEach,
      JsonNode then) {

    private RuleCase of(String family) {
      if (!(given instanceof ObjectNode fitting) || fitting.has("family")) {
        return this;
      }
      ObjectNode named = fitting.deepCopy().put("family", family);
      return new RuleCase(kind, heading, line, named, withEach, then);
    }
  }
}
