package easewright.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.fuzz.RawRequest.Answer;
import easewright.http.Examples;
import easewright.mcp.Tools;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Hostile messages to the assistants' address: each is answered or refused in good order, in JSON
 * wherever anything is said (Model Context Protocol, revision 2025-11-25, basic/transports), and a
 * good one is answered afterwards as before. Repeatable by its seed, as {@link EndpointsFuzz} is.
 */
@QuarkusTest
class AssistantFuzzTest extends SilentLog {
  private static final int TRIES = 20 * Integer.getInteger("easewright.fuzz.tries", 12);
  private static final long SEED = Long.getLong("easewright.fuzz.seed", 20260311);
  private static final ObjectMapper JSON = new ObjectMapper();

  private static final String HELLO =
      """
      {"jsonrpc": "2.0", "id": 1, "method": "initialize", "params": {
        "protocolVersion": "2025-11-25", "capabilities": {},
        "clientInfo": {"name": "assistant", "version": "1"}}}
      """;

  /** A stream to listen on stays open, so "GET" is not among them. */
  private static final List<String> OTHER_METHODS = List.of("PUT", "DELETE", "PATCH", "ZQ9");

  private String session;

  @Test
  void whatever_an_assistant_sends_is_answered_or_refused_in_good_order() throws IOException {
    Hostile hostile = new Hostile(new Random(SEED));
    List<JsonNode> good = goodMessages();
    openSession();
    for (int i = 0; i < TRIES; i++) {
      Map<String, String> headers = headers();
      if (hostile.now(4)) {
        hostile.spoil(headers);
      }
      if (hostile.now(10)) {
        headers.put("Mcp-Session-Id", hostile.one(List.of("", "zq9", "zq9".repeat(600))));
      }
      if (hostile.now(10)) {
        headers.put("MCP-Protocol-Version", "zq9");
      }
      RawRequest request =
          new RawRequest(
              hostile.now(20) ? hostile.one(OTHER_METHODS) : "POST",
              hostile.now(20) ? "/mcp/" + hostile.segment() : "/mcp",
              headers,
              hostile.json(hostile.one(good)));
      Answer answer = request.send(RestAssured.port);
      look(request, answer);
      if (!isAnswered(good.get(0))) {
        openSession(); // a message may well have ended it
        assertTrue(isAnswered(good.get(0)), request::toString);
      }
    }
    assertNothingWasLogged();
  }

  @Test
  void a_good_message_of_each_kind_is_answered() throws IOException {
    openSession();
    for (JsonNode message : goodMessages()) {
      assertTrue(isAnswered(message), message::toString);
    }
  }

  private void look(RawRequest request, Answer answer) throws IOException {
    GoodOrder.look(request, answer);
    String told = request + "\n" + answer.status() + " " + answer.headers() + "\n" + answer.body();
    if (answer.status() >= 400) {
      GoodOrder.lookAtRefusal(answer.body(), told);
    }
    for (JsonNode message : messages(answer)) {
      assertEquals("2.0", message.path("jsonrpc").asText(), told);
      if (message.has("error")) {
        assertTrue(message.at("/error/code").isInt(), told);
        GoodOrder.lookAtRefusal(message.path("error").toString(), told);
      } else if (message.at("/result/isError").asBoolean()) {
        GoodOrder.lookAtRefusal(message.path("result").toString(), told);
      }
    }
  }

  /** What was said, whether in one piece or as a stream of events (WHATWG HTML, section 9.2). */
  private static List<JsonNode> messages(Answer answer) throws IOException {
    List<JsonNode> messages = new ArrayList<>();
    String form = answer.header("content-type");
    if (form.startsWith("text/event-stream")) {
      for (String line : answer.body().lines().toList()) {
        if (line.startsWith("data:")) {
          messages.add(JSON.readTree(line.substring(5)));
        }
      }
    } else if (form.startsWith("application/json") && !answer.body().isBlank()) {
      JsonNode said = JSON.readTree(answer.body());
      if (said.isArray()) {
        said.forEach(messages::add);
      } else {
        messages.add(said);
      }
    }
    return messages;
  }

  private void openSession() {
    session = null;
    Answer hello =
        new RawRequest("POST", "/mcp", headers(), HELLO.getBytes(UTF_8)).send(RestAssured.port);
    session = hello.header("mcp-session-id");
    new RawRequest(
            "POST",
            "/mcp",
            headers(),
            "{\"jsonrpc\": \"2.0\", \"method\": \"notifications/initialized\"}".getBytes(UTF_8))
        .send(RestAssured.port);
  }

  private boolean isAnswered(JsonNode message) throws IOException {
    Answer answer =
        new RawRequest("POST", "/mcp", headers(), message.toString().getBytes(UTF_8))
            .send(RestAssured.port);
    return messages(answer).stream()
        .anyMatch(
            said ->
                said.path("id").equals(message.path("id"))
                    && said.has("result")
                    && !said.at("/result/isError").asBoolean());
  }

  private Map<String, String> headers() {
    Map<String, String> headers = new LinkedHashMap<>();
    headers.put("Host", "localhost");
    headers.put("Accept", "application/json, text/event-stream");
    headers.put("Content-Type", "application/json");
    if (session != null) {
      headers.put("Mcp-Session-Id", session);
    }
    return headers;
  }

  private static List<JsonNode> goodMessages() throws IOException {
    List<JsonNode> good = new ArrayList<>();
    for (String[] kind :
        new String[][] {
          {"ping", "{}"},
          {"tools/list", "{}"},
          {"resources/list", "{}"},
          {"resources/templates/list", "{}"},
          {"resources/read", "{\"uri\": \"easewright://rules/band-too-long\"}"},
          {
            "completion/complete",
            "{\"ref\": {\"type\": \"ref/resource\", \"uri\": \"easewright://rules/{id}\"},"
                + " \"argument\": {\"name\": \"id\", \"value\": \"band\"}}"
          }
        }) {
      good.add(message(good.size() + 1, kind[0], JSON.readTree(kind[1])));
    }
    for (Examples.Example example : Examples.all()) {
      boolean answered = example.status() == 200 && example.form().equals("application/json");
      if (answered && Tools.BY_PATH.containsKey(example.path())) {
        ObjectNode call = JSON.createObjectNode().put("name", Tools.BY_PATH.get(example.path()));
        call.set("arguments", JSON.readTree(example.request()));
        good.add(message(good.size() + 1, "tools/call", call));
      }
    }
    return good;
  }

  private static ObjectNode message(int id, String method, JsonNode parameters) {
    ObjectNode message = JSON.createObjectNode();
    message.put("jsonrpc", "2.0").put("id", id).put("method", method);
    return message.set("params", parameters);
  }
}
