package easewright.mcp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.LogListening;
import easewright.mcp.Wire.Answer;
import io.quarkiverse.mcp.server.runtime.ConnectionManager;
import io.quarkiverse.mcp.server.runtime.McpConnectionBase;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.vertx.core.json.JsonObject;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a stranger can make the service store: only few small sessions, for a short time. Statuses
 * from the Model Context Protocol 2025-11-25, basic/transports, "Session Management", and RFC 6585,
 * section 4; error objects from JSON-RPC 2.0, section 5.1.
 */
@Tag("long")
@QuarkusTest
@TestProfile(SessionsTest.Few.class)
class SessionsTest extends LogListening {
  private static final String PING = "{\"jsonrpc\": \"2.0\", \"id\": 7, \"method\": \"ping\"}";

  /** A service for six short-lived sessions, three per client. */
  public static class Few implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.mcp.sessions", "6",
          "easewright.mcp.sessions-of-one-place", "3",
          "quarkus.mcp.server.connection-idle-timeout", "2S");
    }
  }

  @Inject ConnectionManager kept;

  @AfterEach
  void endAll() {
    kept.forEach(one -> kept.remove(one.id()));
    assertEquals(
        List.of(), log.lines().stream().filter(line -> line.contains("\tat ")).toList(), "traces");
  }

  private static Wire from(String address) throws IOException {
    return new Wire(RestAssured.port, address);
  }

  private List<McpConnectionBase> sessions() {
    List<McpConnectionBase> all = new ArrayList<>();
    kept.forEach(all::add);
    return all;
  }

  private static void assertRefused(int status, Answer answer) {
    assertEquals(status, answer.status(), answer::toString);
    JsonObject said = new JsonObject(answer.body());
    assertEquals("2.0", said.getString("jsonrpc"), answer::toString);
    assertTrue(said.getJsonObject("error").getInteger("code") < 0, answer::toString);
    assertFalse(said.getJsonObject("error").getString("message").isBlank(), answer::toString);
  }

  private static void assertFull(int status, Answer answer) {
    assertRefused(status, answer);
    assertTrue(Integer.parseInt(answer.headers().get("retry-after")) > 0, answer::toString);
  }

  @Test
  void a_client_at_its_limit_gets_no_more_sessions_until_it_ends_one() throws IOException {
    try (Wire greedy = from("127.0.0.1");
        Wire other = from("127.0.0.2")) {
      List<String> held = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        held.add(greedy.open().session());
      }
      assertFull(429, greedy.open());
      assertEquals(200, other.open().status());
      for (String session : held) {
        assertEquals(200, greedy.post(session, PING).status());
      }
      assertEquals(
          200, greedy.send("DELETE", "/mcp", Map.of(Wire.SESSION, held.get(0)), null).status());
      Answer again = greedy.open();
      assertEquals(200, again.status(), again::toString);
      assertEquals(200, greedy.post(again.session(), PING).status());
      assertEquals(404, greedy.post(held.get(0), PING).status());
      assertFull(429, greedy.open());
    }
  }

  @Test
  void many_clients_together_get_no_more_than_the_total() throws IOException {
    List<String> held = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      try (Wire stranger = from("127.0." + (1 + i / 20) + "." + (1 + i % 20))) {
        Answer answer = stranger.open();
        if (answer.session() == null) {
          assertFull(503, answer);
        } else {
          held.add(answer.session());
        }
      }
    }
    assertEquals(6, held.size());
    assertEquals(6, sessions().size());
    try (Wire first = from("127.0.1.1")) {
      assertEquals(200, first.post(held.get(0), PING).status());
    }
  }

  @Test
  void an_unused_session_is_dropped_and_frees_its_room() throws Exception {
    try (Wire wire = from("127.0.0.3")) {
      for (int i = 0; i < 3; i++) {
        wire.open();
      }
      assertFull(429, wire.open());
      for (int tries = 0; tries < 100 && !sessions().isEmpty(); tries++) {
        Thread.sleep(100);
      }
      assertEquals(List.of(), sessions());
      assertEquals(200, wire.open().status());
    }
  }

  /** Each of these used to open a session that nobody could use or end. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "no JSON",
        "{\"jsonrpc\": \"2.0\", \"id\": 1, \"result\": {}}",
        "{\"jsonrpc\": \"2.0\", \"id\": 1, \"method\": \"ping\"}",
        "{\"jsonrpc\": \"2.0\", \"method\": \"notifications/initialized\"}",
        "{\"jsonrpc\": \"2.0\", \"method\": \"notifications/cancelled\"}",
        "[]",
        "[{\"jsonrpc\": \"2.0\", \"id\": 1, \"result\": {}}]",
        "{\"jsonrpc\": \"2.0\", \"id\": 1, \"method\": \"initialize\"}",
        "{\"jsonrpc\": \"1.0\", \"id\": 1, \"method\": \"initialize\", \"params\": {"
            + "\"protocolVersion\": \"2025-11-25\", \"capabilities\": {},"
            + " \"clientInfo\": {\"name\": \"a\", \"version\": \"1\"}}}"
      })
  void what_is_not_a_first_message_opens_nothing(String message) throws IOException {
    try (Wire wire = from("127.0.0.4")) {
      assertRefused(400, wire.post(null, message));
      assertEquals(List.of(), sessions());
    }
  }

  @Test
  void a_first_message_in_a_batch_or_of_an_unknown_revision_in_its_header_opens_nothing()
      throws IOException {
    try (Wire wire = from("127.0.0.5")) {
      assertRefused(400, wire.post(null, "[" + Wire.hello("assistant") + "]"));
      assertRefused(
          400,
          wire.send(
              "POST", "/mcp", Map.of("MCP-Protocol-Version", "zq9"), Wire.hello("assistant")));
      assertEquals(List.of(), sessions());
    }
  }

  @Test
  void an_unknown_session_is_not_found() throws IOException {
    try (Wire wire = from("127.0.0.6")) {
      assertRefused(404, wire.post("zq9", PING));
      assertRefused(404, wire.post("zq9", Wire.hello("assistant")));
      assertRefused(404, wire.send("DELETE", "/mcp", Map.of(Wire.SESSION, "zq9"), null));
      assertRefused(400, wire.send("DELETE", "/mcp", Map.of(), null));
      assertEquals(List.of(), sessions());
    }
  }

  /** If it were stored, it would be for as long as the session. */
  @Test
  void the_description_a_client_sends_is_not_stored() throws IOException {
    try (Wire wire = from("127.0.0.7")) {
      String name = "ninety-three".repeat(100);
      assertEquals(200, wire.post(null, Wire.hello(name)).status());
      String capable =
          Wire.hello("b")
              .replace("\"capabilities\": {}", "\"capabilities\": {\"" + name + "\": {\"a\": 1}}");
      assertEquals(200, wire.post(null, capable).status());
      assertEquals(2, sessions().size());
      for (McpConnectionBase session : sessions()) {
        assertFalse(session.initialRequest().toString().contains("ninety-three"));
        assertEquals("2025-11-25", session.initialRequest().protocolVersion());
      }
      assertRefused(400, wire.post(null, Wire.hello("a".repeat(9000))));
      assertEquals(2, sessions().size());
    }
  }

  /** A stream holds a connection, and this server never sends anything unasked. */
  @Test
  void no_stream_is_held_open() throws IOException {
    try (Wire wire = from("127.0.0.8")) {
      String session = wire.open().session();
      Answer listening = wire.send("GET", "/mcp", Map.of(Wire.SESSION, session), null);
      assertEquals(405, listening.status());
      assertEquals("POST, DELETE", listening.headers().get("allow"));
      for (String address : List.of("/mcp/sse", "/mcp/messages/" + session, "/mcp/x")) {
        assertEquals(404, wire.send("GET", address, Map.of(), null).status(), address);
        assertEquals(404, wire.send("POST", address, Map.of(), "{}").status(), address);
      }
      assertEquals(1, sessions().size());
    }
  }

  /** The extension stores an ever-growing list of subscribers, and cancellation reasons. */
  @Test
  void subscriptions_and_cancellations_reach_nothing_that_keeps_them() throws Exception {
    var resources =
        Class.forName("io.quarkiverse.mcp.server.runtime.ResourceManagerImpl")
            .getDeclaredField("uriToSubscribers");
    resources.setAccessible(true);
    Map<?, ?> subscribers = (Map<?, ?>) resources.get(io.quarkus.arc.ClientProxy.unwrap(manager));
    try (Wire wire = from("127.0.0.9")) {
      String session = wire.open().session();
      Answer subscribed =
          wire.post(session, subscribe("resources/subscribe", "easewright://rules"));
      assertEquals(200, subscribed.status());
      assertEquals(new JsonObject(), new JsonObject(subscribed.body()).getJsonObject("result"));
      assertEquals(
          200,
          wire.post(session, subscribe("resources/unsubscribe", "easewright://rules")).status());
      Answer unknown = wire.post(session, subscribe("resources/subscribe", "easewright://zq9"));
      assertEquals(
          -32002,
          new JsonObject(unknown.body()).getJsonObject("error").getInteger("code"),
          unknown::toString);
      assertEquals(
          202,
          wire.post(
                  session,
                  "{\"jsonrpc\": \"2.0\", \"method\": \"notifications/cancelled\","
                      + " \"params\": {\"requestId\": 7, \"reason\": \"a\"}}")
              .status());
      assertEquals(Map.of(), subscribers);
    }
  }

  @Inject io.quarkiverse.mcp.server.ResourceManager manager;

  /** Each used to be a server error, with a stack trace of a thousand lines for two kilobytes. */
  @ParameterizedTest
  @ValueSource(ints = {100, 500, 900, 999, 1001, 10_000})
  void a_message_nested_deep_is_refused_in_a_session_as_out_of_one(int depth) throws IOException {
    try (Wire wire = from("127.0.0.10")) {
      String session = wire.open().session();
      String nested = "[".repeat(depth) + "]".repeat(depth);
      for (String message :
          List.of(
              nested,
              "[" + PING + "," + nested + "]",
              PING.replace("7", nested),
              PING.replace("}", ", \"params\": {\"a\": " + nested + "}}"))) {
        assertRefused(400, wire.post(session, message));
        assertRefused(400, wire.post(null, message));
      }
      assertEquals(200, wire.post(session, PING).status());
      assertEquals(List.of(), log.lines());
    }
  }

  private static String subscribe(String method, String uri) {
    return "{\"jsonrpc\": \"2.0\", \"id\": 3, \"method\": \"%s\", \"params\": {\"uri\": \"%s\"}}"
        .formatted(method, uri);
  }
}
