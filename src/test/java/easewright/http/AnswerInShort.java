package easewright.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;

/**
 * The essentials of an answer: likely causes in order, changes with amounts, the first question,
 * the size and the cautions. Two answers match if all of this is equal and probabilities differ by
 * no more than {@value #TOLERANCE}.
 */
final class AnswerInShort {
  static final double TOLERANCE = 0.02;

  /** Causes below this are not shown. */
  private static final double LEAST = 0.1;

  private AnswerInShort() {}

  /** The essentials of an answer, for recording. */
  static ObjectNode of(JsonNode answer) {
    ObjectNode told = JsonNodeFactory.instance.objectNode();
    ObjectNode causes = told.putObject("causes");
    for (JsonNode cause : answer.path("causes")) {
      if (cause.path("probability").asDouble() >= LEAST) {
        causes.put(cause.path("id").asText(), rounded(cause.path("probability").asDouble()));
      }
    }
    ArrayNode advice = told.putArray("advice");
    for (JsonNode change : answer.path("adjustments")) {
      String amount = change.at("/amount/text").asText();
      advice.add(change.path("id").asText() + (amount.isEmpty() ? "" : ": " + amount));
    }
    ArrayNode cautions = told.putArray("cautions");
    answer.path("cautions").forEach(caution -> cautions.add(caution.path("id").asText()));
    told.put("asks", answer.at("/questions/0/sign").asText());
    told.put("size", answer.at("/size/recommended/size").asText());
    return told;
  }

  /**
   * The differences between the recorded and the current answer, in words.
   *
   * @return an empty list if they match
   */
  static List<String> differences(ObjectNode recorded, ObjectNode now) {
    List<String> differences = new ArrayList<>();
    for (String part : List.of("advice", "cautions", "asks", "size")) {
      if (!recorded.path(part).equals(now.path(part))) {
        differences.add(part + ": was " + recorded.path(part) + ", is " + now.path(part));
      }
    }
    JsonNode before = recorded.path("causes");
    JsonNode after = now.path("causes");
    for (var cause : before.properties()) {
      double was = cause.getValue().asDouble();
      double is = after.path(cause.getKey()).asDouble();
      if (Math.abs(was - is) > TOLERANCE && !(was - TOLERANCE < LEAST && is == 0)) {
        differences.add(cause.getKey() + ": was " + was + ", is " + is);
      }
    }
    for (var cause : after.properties()) {
      if (!before.has(cause.getKey()) && cause.getValue().asDouble() > LEAST + TOLERANCE) {
        differences.add(cause.getKey() + ": was not likely, is " + cause.getValue());
      }
    }
    String first = first(before);
    if (!first.equals(first(after)) && before.path(first).asDouble() - second(before) > TOLERANCE) {
      differences.add("first: was " + first + ", is " + first(after));
    }
    return differences;
  }

  private static String first(JsonNode causes) {
    return causes.fieldNames().hasNext() ? causes.fieldNames().next() : "";
  }

  private static double second(JsonNode causes) {
    List<Double> all = new ArrayList<>();
    causes.forEach(one -> all.add(one.asDouble()));
    return all.size() < 2 ? 0 : all.get(1);
  }

  private static double rounded(double probability) {
    return Math.round(probability * 100) / 100.0;
  }
}
