package easewright.mcp;

import easewright.api.Problem;
import io.quarkus.runtime.configuration.MemorySize;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.DecodeException;
import io.vertx.core.json.Json;
import io.vertx.core.json.JsonArray;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Refuses messages that are JSON but not of the protocol's form, such as a number for parameters or
 * a call of a tool without its name: JSON-RPC 2.0, section 5.1, -32600 and -32602, with status 400
 * (Model Context Protocol 2025-11-25, basic/transports). The extension stumbles over them, and then
 * tells a failure of ours or nothing at all. What it nevertheless leaves unanswered is given up, so
 * that nobody waits for ever and the place is free again.
 */
@Singleton
class MessageCheck {
  /** After every filter and the bound of bodies, before the extension. */
  private static final int AFTER_FILTERS = -1;

  private static final int INVALID_REQUEST = -32600;
  private static final int INVALID_PARAMS = -32602;

  /** The parameters a method cannot do without, each a text. */
  private static final Map<String, List<String>> TEXTS =
      Map.of(
          "initialize", List.of("protocolVersion"),
          "tools/call", List.of("name"),
          "resources/read", List.of("uri"),
          "resources/subscribe", List.of("uri"),
          "resources/unsubscribe", List.of("uri"),
          "prompts/get", List.of("name"),
          "logging/setLevel", List.of("level"));

  /** The parameters a method cannot do without, each an object with these texts. */
  private static final Map<String, Map<String, List<String>>> OBJECTS =
      Map.of(
          "initialize",
          Map.of("capabilities", List.of(), "clientInfo", List.of("name", "version")),
          "completion/complete",
          Map.of("ref", List.of("type"), "argument", List.of("name", "value")));

  /** Parameters of any method that are an object wherever they stand. */
  private static final List<String> OBJECTS_IF_ANY = List.of("arguments", "_meta", "context");

  private final String path;
  private final long mostBytes;
  private final long mostTimeMs;

  MessageCheck(
      @ConfigProperty(name = "quarkus.mcp.server.http.root-path") String path,
      @ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize mostBytes,
      @ConfigProperty(name = "easewright.limit.time") Duration mostTime) {
    this.path = path.startsWith("/") ? path : "/" + path;
    this.mostBytes = mostBytes.asLongValue();
    this.mostTimeMs = 2 * mostTime.toMillis();
  }

  void register(@Observes Router router) {
    for (String below : List.of(path, path + "/*")) {
      router
          .post(below)
          .order(AFTER_FILTERS)
          .handler(BodyHandler.create(false).setBodyLimit(mostBytes))
          .handler(this::check);
    }
  }

  private void check(RoutingContext call) {
    Buffer body = call.body().buffer();
    Optional<JsonObject> fault = Optional.empty();
    try {
      fault = body == null ? fault : fault(Json.decodeValue(body));
    } catch (DecodeException noJson) {
      // The extension refuses that itself.
    }
    if (fault.isPresent()) {
      refuse(call, fault.get());
    } else {
      giveUpInTime(call);
      call.next();
    }
  }

  private static Optional<JsonObject> fault(Object message) {
    return message instanceof JsonArray many
        ? many.stream().map(MessageCheck::faultOfOne).flatMap(Optional::stream).findFirst()
        : faultOfOne(message);
  }

  private void giveUpInTime(RoutingContext call) {
    long timer =
        call.vertx()
            .setTimer(
                mostTimeMs,
                late -> {
                  if (!call.response().headWritten() && !call.response().closed()) {
                    Problem problem = Problem.tookTooLong();
                    call.response()
                        .setStatusCode(problem.status())
                        .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                        .putHeader(HttpHeaders.RETRY_AFTER, "1")
                        .end(Json.encodeToBuffer(problem));
                  }
                });
    call.addEndHandler(ended -> call.vertx().cancelTimer(timer));
  }

  /** The error to answer with; none if the message has the form of its kind. */
  private static Optional<JsonObject> faultOfOne(Object message) {
    if (!(message instanceof JsonObject object)) {
      return error(null, INVALID_REQUEST, "A message is an object.");
    }
    Object id = object.getValue("id");
    if (object.containsKey("id")
        && !(id instanceof String || id instanceof Integer || id instanceof Long)) {
      return error(null, INVALID_REQUEST, "An id is a text or a whole number.");
    }
    if (!object.containsKey("method")) {
      boolean reply =
          object.getValue("result") instanceof JsonObject
              || object.getValue("error") instanceof JsonObject;
      return reply
          ? Optional.empty()
          : error(id, INVALID_REQUEST, "A message has a method or is a reply.");
    }
    if (!(object.getValue("method") instanceof String method)) {
      return error(id, INVALID_REQUEST, "The name of a method is a text.");
    }
    Object given = object.getValue("params");
    if (given != null && !(given instanceof JsonObject)) {
      return error(id, INVALID_PARAMS, "Parameters are an object.");
    }
    JsonObject parameters = given == null ? new JsonObject() : (JsonObject) given;
    for (String name : TEXTS.getOrDefault(method, List.of())) {
      if (!(parameters.getValue(name) instanceof String)) {
        return error(id, INVALID_PARAMS, "This method needs the text \"" + name + "\".");
      }
    }
    for (Map.Entry<String, List<String>> one : OBJECTS.getOrDefault(method, Map.of()).entrySet()) {
      boolean whole =
          parameters.getValue(one.getKey()) instanceof JsonObject part
              && one.getValue().stream().allMatch(text -> part.getValue(text) instanceof String);
      if (!whole) {
        return error(id, INVALID_PARAMS, "This method needs the object \"" + one.getKey() + "\".");
      }
    }
    for (String name : OBJECTS_IF_ANY) {
      Object value = parameters.getValue(name);
      if (value != null && !(value instanceof JsonObject)) {
        return error(id, INVALID_PARAMS, "\"" + name + "\" is an object.");
      }
    }
    return isFinite(parameters)
        ? Optional.empty()
        : error(id, INVALID_PARAMS, "A number is beyond all measure.");
  }

  /** Beyond the doubles a number becomes infinite, and can't be written as JSON any more. */
  private static boolean isFinite(Object value) {
    if (value instanceof JsonObject object) {
      return object.stream().allMatch(entry -> isFinite(entry.getValue()));
    }
    if (value instanceof JsonArray array) {
      return array.stream().allMatch(MessageCheck::isFinite);
    }
    return !(value instanceof Double number) || Double.isFinite(number);
  }

  private static Optional<JsonObject> error(Object id, int code, String message) {
    return Optional.of(
        new JsonObject()
            .put("jsonrpc", "2.0")
            .put("id", id)
            .put("error", new JsonObject().put("code", code).put("message", message)));
  }

  private static void refuse(RoutingContext call, JsonObject fault) {
    call.response()
        .setStatusCode(400)
        .putHeader(HttpHeaders.CONTENT_TYPE, "application/json")
        .end(fault.toBuffer());
  }
}
