package easewright.mcp;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.diagnosis.Answer;
import easewright.request.RequestJson;
import easewright.saying.ReplyLength;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.function.Function;

/**
 * One turn of a conversation about a fitting: what the last answer gave to go on from, and what is
 * new.
 *
 * @param answer the answer to both together
 * @param length how much of it is said
 */
record Turn(Answer answer, ReplyLength length) {
  static final String TOOL = "answer_fitting";
  static final String SO_FAR = "soFar";
  static final String LENGTH = ReplyLength.PARAMETER;

  /**
   * Answers a turn.
   *
   * @throws easewright.saying.BadParameter for another length
   * @throws easewright.request.FaultyRequest naming every fault of the request
   */
  static Turn of(JsonNode arguments, Function<JsonNode, Answer> fittings) {
    if (!(arguments instanceof ObjectNode told)) {
      return new Turn(fittings.apply(arguments), ReplyLength.SHORT);
    }
    ObjectNode added = told.deepCopy();
    ReplyLength length = ReplyLength.of(text(added.remove(LENGTH)), ReplyLength.SHORT);
    JsonNode before = soFar(added.path(SO_FAR));
    if (before instanceof ObjectNode all) {
      added.remove(SO_FAR); // anything else stays, and is refused
      added = joined(all, added);
    }
    return new Turn(fittings.apply(added), length);
  }

  /** Models write an object now and then as the text of one. */
  private static JsonNode soFar(JsonNode written) {
    return written.isTextual()
        ? RequestJson.parse(written.textValue().getBytes(StandardCharsets.UTF_8))
        : written;
  }

  private static String text(JsonNode length) {
    return length == null ? null : length.asText();
  }

  /** Lists go on; of a sign that is reported anew, only the new report counts. */
  private static ObjectNode joined(ObjectNode before, ObjectNode added) {
    ObjectNode all = before.deepCopy();
    for (Map.Entry<String, JsonNode> one : added.properties()) {
      if (all.get(one.getKey()) instanceof ArrayNode list && one.getValue().isArray()) {
        one.getValue().forEach(entry -> withoutEarlier(list, entry).add(entry));
      } else {
        all.set(one.getKey(), one.getValue());
      }
    }
    return all;
  }

  private static ArrayNode withoutEarlier(ArrayNode list, JsonNode entry) {
    for (int i = list.size() - 1; i >= 0; i--) {
      if (entry.has("sign") && list.get(i).path("sign").equals(entry.path("sign"))) {
        list.remove(i);
      }
    }
    return list;
  }

  /** The schema of the argument that chooses the length. */
  static ObjectNode lengths() {
    ObjectNode schema = JsonNodeFactory.instance.objectNode().put("type", "string");
    schema.putArray("enum").add("short").add("long");
    return schema;
  }
}
