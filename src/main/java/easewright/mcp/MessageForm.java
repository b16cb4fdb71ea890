package easewright.mcp;

import io.vertx.core.json.JsonArray;
import io.vertx.core.json.JsonObject;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Checks whether JSON is a message of the protocol (JSON-RPC 2.0, section 4; required members by
 * the schema of the Model Context Protocol 2025-11-25). The extension casts without checking, and
 * then reports a server error or nothing at all.
 */
final class MessageForm {
  /** Only clients of revision 2025-03-26 send several at once; each may be a whole fitting. */
  private static final int MOST_AT_ONCE = 10;

  /** Maximum length of an id, which is held while its message is answered. */
  private static final int LONGEST_ID = 200;

  /**
   * Messages that the service answers or inspects itself, not accepted in batches (see {@link
   * SessionCheck}).
   */
  private static final List<String> ALONE =
      List.of(
          "initialize", "resources/subscribe", "resources/unsubscribe", "notifications/cancelled");

  /** Required string parameters by method. */
  private static final Map<String, List<String>> TEXTS =
      Map.of(
          "initialize", List.of("protocolVersion"),
          "tools/call", List.of("name"),
          "resources/read", List.of("uri"),
          "resources/subscribe", List.of("uri"),
          "resources/unsubscribe", List.of("uri"),
          "prompts/get", List.of("name"),
          "logging/setLevel", List.of("level"));

  /** Required object parameters by method, with their required strings. */
  private static final Map<String, Map<String, List<String>>> OBJECTS =
      Map.of(
          "initialize",
          Map.of("capabilities", List.of(), "clientInfo", List.of("name", "version")),
          "completion/complete",
          Map.of("ref", List.of("type"), "argument", List.of("name", "value")));

  /** Parameters that must be objects in any method, if present. */
  private static final List<String> OBJECTS_IF_ANY = List.of("arguments", "_meta", "context");

  /** The tool that searches for a layout. */
  private static final String PLAN_CUT = "plan_cut";

  private MessageForm() {}

  /** The error to answer with; empty if the JSON is a message or a valid batch. */
  static Optional<RpcError> fault(Object json) {
    return json instanceof JsonArray many ? faultOfMany(many) : faultOfOne(json);
  }

  private static Optional<RpcError> faultOfMany(JsonArray many) {
    if (many.isEmpty() || many.size() > MOST_AT_ONCE) {
      return noMessage(null, "A batch holds 1 to " + MOST_AT_ONCE + " messages.");
    }
    for (Object one : many) {
      Optional<RpcError> fault = faultOfOne(one);
      if (fault.isPresent()) {
        return fault;
      }
      JsonObject message = (JsonObject) one;
      if (isLong(message)) {
        return noMessage(message.getValue("id"), "A call of \"" + PLAN_CUT + "\" is sent alone.");
      }
      if (ALONE.contains(message.getString("method", ""))) {
        return noMessage(
            message.getValue("id"), "\"" + message.getString("method") + "\" is sent alone.");
      }
    }
    return Optional.empty();
  }

  /** Whether a message requests a long layout search. */
  static boolean isLong(Object json) {
    return json instanceof JsonObject message
        && "tools/call".equals(message.getValue("method"))
        && message.getValue("params") instanceof JsonObject given
        && PLAN_CUT.equals(given.getValue("name"));
  }

  private static Optional<RpcError> faultOfOne(Object json) {
    if (!(json instanceof JsonObject message)) {
      return noMessage(null, "A message is an object.");
    }
    Object id = message.getValue("id");
    if (message.containsKey("id") && !isId(id)) {
      return noMessage(
          null, "An id is a whole number or a text of at most " + LONGEST_ID + " characters.");
    }
    if (!message.containsKey("method")) {
      boolean reply =
          message.getValue("result") instanceof JsonObject
              || message.getValue("error") instanceof JsonObject;
      return reply ? Optional.empty() : noMessage(id, "A message has a method or is a reply.");
    }
    if (!(message.getValue("method") instanceof String method)) {
      return noMessage(id, "The name of a method is a text.");
    }
    Object given = message.getValue("params");
    if (given != null && !(given instanceof JsonObject)) {
      return badParameters(id, "Parameters are an object.");
    }
    return faultOfParameters(id, method, given == null ? new JsonObject() : (JsonObject) given);
  }

  private static boolean isId(Object id) {
    return id instanceof String text && text.length() <= LONGEST_ID
        || id instanceof Integer
        || id instanceof Long;
  }

  private static Optional<RpcError> faultOfParameters(Object id, String method, JsonObject given) {
    for (String name : TEXTS.getOrDefault(method, List.of())) {
      if (!(given.getValue(name) instanceof String)) {
        return badParameters(id, "This method needs the text \"" + name + "\".");
      }
    }
    for (Map.Entry<String, List<String>> one : OBJECTS.getOrDefault(method, Map.of()).entrySet()) {
      boolean whole =
          given.getValue(one.getKey()) instanceof JsonObject part
              && one.getValue().stream().allMatch(text -> part.getValue(text) instanceof String);
      if (!whole) {
        return badParameters(id, "This method needs the object \"" + one.getKey() + "\".");
      }
    }
    for (String name : OBJECTS_IF_ANY) {
      Object value = given.getValue(name);
      if (value != null && !(value instanceof JsonObject)) {
        return badParameters(id, "\"" + name + "\" is an object.");
      }
    }
    return Optional.empty();
  }

  private static Optional<RpcError> noMessage(Object id, String message) {
    return Optional.of(RpcError.noMessage(id, message));
  }

  private static Optional<RpcError> badParameters(Object id, String message) {
    return Optional.of(RpcError.badParameters(id, message));
  }
}
