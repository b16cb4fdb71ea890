package easewright.handbook;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.rulebook.RulePage.RuleCase;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;

/**
 * A case of a page as a table; the tests run the same case.
 *
 * @param kind "speaks", "silent" or "boundary"
 * @param given what the fitting states, one row each
 * @param then the required results, one row each
 */
public record TriedCase(String kind, List<Row> given, List<Row> then) {
  /** A row of a case: its label and its value, possibly a link. */
  public record Row(String label, PageLink says, String more) {}

  static TriedCase of(RuleCase tried, Links links) {
    List<Row> given = new ArrayList<>();
    for (Map.Entry<String, JsonNode> part : tried.given().properties()) {
      if (part.getKey().equals("signs")) {
        part.getValue().forEach(sign -> given.add(sign(sign, links)));
      } else {
        given.add(
            new Row(words(part.getKey()), new PageLink(text(part.getValue(), links), null), ""));
      }
    }
    for (JsonNode one : tried.withEach()) {
      PageLink says =
          one.isTextual() ? links.of(one.asText()) : new PageLink(text(one, links), null);
      given.add(new Row("with each", says, ""));
    }
    List<Row> then = new ArrayList<>();
    for (Map.Entry<String, JsonNode> part : tried.then().properties()) {
      Iterable<JsonNode> ids =
          part.getValue().isArray() ? part.getValue() : List.of(part.getValue());
      ids.forEach(id -> then.add(new Row(part.getKey(), links.of(id.asText()), "")));
    }
    return new TriedCase(tried.kind(), given, then);
  }

  private static Row sign(JsonNode sign, Links links) {
    StringJoiner more = new StringJoiner(", ", ", ", "").setEmptyValue("");
    for (Map.Entry<String, JsonNode> part : sign.properties()) {
      if (!part.getKey().equals("sign") && !part.getKey().equals("seen")) {
        more.add(words(part.getValue().asText()));
      }
    }
    return new Row(
        "sign " + sign.path("seen").asText("present"),
        links.of(sign.path("sign").asText()),
        more.toString());
  }

  private static String text(JsonNode value, Links links) {
    StringJoiner all = new StringJoiner(value.isArray() ? "; " : ", ");
    if (value.isArray()) {
      value.forEach(one -> all.add(text(one, links)));
    } else if (value.isObject()) {
      for (Map.Entry<String, JsonNode> part : value.properties()) {
        String inner = text(part.getValue(), links);
        all.add(
            words(part.getKey()) + " " + (part.getValue().isObject() ? "(" + inner + ")" : inner));
      }
    } else {
      all.add(links.of(value.asText()).name());
    }
    return all.toString();
  }

  /** A wire name in words: "bustPointWidth" and "all-over" as "bust point width", "all over". */
  static String words(String name) {
    return name.replaceAll("([a-z])([A-Z])", "$1 $2")
        .replaceAll("(?<=[a-z])-(?=[a-z])", " ")
        .toLowerCase(Locale.ROOT);
  }
}
