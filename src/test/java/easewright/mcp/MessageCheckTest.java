package easewright.mcp;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.pattern.LargestSheet;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The checks in front of the protocol's extension, here in front of a stub that answers "taken" or
 * nothing. Codes by JSON-RPC 2.0, section 5.1; required members by the schema of the Model Context
 * Protocol, revision 2025-11-25 (from memory).
 */
class MessageCheckTest {
  private final Vertx vertx = Vertx.vertx();
  private HttpServer server;
  private boolean longWork = true;

  @BeforeEach
  void serve() throws Exception {
    Router router = Router.router(vertx);
    new MessageCheck(call -> longWork, "mcp", Duration.ofMillis(20)).register(router);
    router.post("/mcp").handler(call -> call.response().end("taken"));
    router.post("/mcp/silent").handler(call -> {});
    server =
        vertx
            .createHttpServer()
            .requestHandler(router)
            .listen(0, "127.0.0.1")
            .toCompletionStage()
            .toCompletableFuture()
            .get();
  }

  @AfterEach
  void stop() throws Exception {
    vertx.close().toCompletionStage().toCompletableFuture().get();
  }

  private HttpResponse<String> send(String path, String body)
      throws IOException, InterruptedException {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(address(path)).POST(BodyPublishers.ofString(body)).build(),
            BodyHandlers.ofString());
  }

  private URI address(String path) {
    return URI.create("http://127.0.0.1:" + server.actualPort() + path);
  }

  @Test
  void a_cut_plan_takes_a_slot_for_long_work_and_is_not_accepted_in_a_batch() throws Exception {
    String plan =
        """
        {"jsonrpc": "2.0", "id": 7, "method": "tools/call",
          "params": {"name": "plan_cut", "arguments": {}}}
        """;
    assertEquals("taken", send("/mcp", plan).body());
    assertEquals(400, send("/mcp", "[" + plan + "]").statusCode());
    longWork = false;
    HttpResponse<String> refused = send("/mcp", plan);
    assertEquals(503, refused.statusCode());
    assertEquals("1", refused.headers().firstValue("Retry-After").orElse(""));
    assertEquals(7, new JsonObject(refused.body()).getInteger("id"));
    assertEquals("taken", send("/mcp", plan.replace("plan_cut", "check_size")).body());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      textBlock =
          """
          null                                                                            | -32600
          7                                                                               | -32600
          {"id": null, "method": "ping"}                                                  | -32600
          {"id": 1.5, "method": "ping"}                                                   | -32600
          {"id": 1}                                                                       | -32600
          {"id": 1, "method": 2}                                                          | -32600
          [{"id": 1, "method": "ping"}, 2]                                                | -32600
          []                                                                              | -32600
          [[{"id": 1, "method": "ping"}]]                                                 | -32600
          [{"method": "resources/subscribe", "params": {"uri": "a"}}]            | -32600
          [{"method": "tools/call", "params": {"name": "a", "arguments": {"b": [1e400]}}}] | -32600
          no JSON                                                                         | -32700
          {"method": "ping"} {}                                                           | -32700
          {"method": "ping", }                                                            | -32700
          {"method": "ping                                                                | -32700
          {"id": 1, "method": "tools/list", "params": 0.5}                                | -32602
          {"id": 1, "method": "tools/call"}                                               | -32602
          {"id": 1, "method": "tools/call", "params": {"name": 3}}                        | -32602
          {"id": 1, "method": "tools/call", "params": {"name": "a", "arguments": []}}     | -32602
          {"id": 1, "method": "resources/read", "params": {}}                             | -32602
          {"id": 1, "method": "completion/complete", "params": {"ref": {"type": "ref/resource"}}} | -32602
          {"id": 1, "method": "initialize", "params": {"protocolVersion": "2025-11-25", "capabilities": {}, "clientInfo": "me"}} | -32602
          """)
  void a_message_of_the_wrong_form_is_refused(String message, int code) throws Exception {
    HttpResponse<String> answer = send("/mcp", message);
    assertEquals(400, answer.statusCode());
    JsonObject said = new JsonObject(answer.body());
    assertEquals(code, said.getJsonObject("error").getInteger("code"), answer.body());
    boolean named = message.startsWith("{\"id\": 1,") || message.startsWith("{\"id\": 1}");
    assertEquals(named ? 1 : null, said.getInteger("id", null), answer.body());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      textBlock =
          """
          {"id": "a", "method": "ping"}
          {"method": "notifications/initialized"}
          {"id": 1, "result": {}}
          {"id": 1, "method": "tools/call", "params": {"name": "a"}}
          {"id": 1, "method": "tools/call", "params": {"name": "a", "arguments": null}}
          {"id": 1, "method": "something/new", "params": {"name": 3}}
          [{"id": 1, "method": "ping"}, {"id": 2, "method": "ping"}]
          """)
  void any_other_message_is_let_pass(String message) throws Exception {
    assertEquals("taken", send("/mcp", message).body());
  }

  @Test
  void a_message_that_is_never_answered_times_out() throws Exception {
    HttpResponse<String> answer = send("/mcp/silent", "{\"id\": 1, \"method\": \"ping\"}");
    assertEquals(503, answer.statusCode());
    assertEquals("1", answer.headers().firstValue("Retry-After").orElseThrow());
    assertTrue(answer.body().contains("/problems/took-too-long"), answer.body());
  }

  /** A parser may recurse for each level, so a loop limits the depth first. */
  @ParameterizedTest
  @ValueSource(ints = {24, 900, 1000, 1001, 30_000})
  void a_message_nested_too_deep_is_refused_however_deep(int depth) throws Exception {
    for (String[] pair : new String[][] {{"[", "]"}, {"{\"a\":", "}"}}) {
      int within = Math.min(depth, 60_000 / (pair[0].length() + 1)) - 2;
      String nested = pair[0].repeat(within) + "1" + pair[1].repeat(within);
      assertRefused(400, -32600, send("/mcp", call(nested)));
      assertRefused(400, -32600, send("/mcp", call(pair[0].repeat(within))));
      assertRefused(400, -32600, send("/mcp", nested));
    }
  }

  /**
   * As deep as an endpoint accepts its request; anything deeper that still passes must be rejected
   * by the tool.
   */
  @Test
  void a_message_nested_as_deep_as_a_request_may_be_is_let_pass() throws Exception {
    String deepest = "{\"a\":".repeat(20) + "1" + "}".repeat(20);
    assertEquals("taken", send("/mcp", call(deepest)).body());
    assertEquals("taken", send("/mcp", "[" + call(deepest) + "]").body());
  }

  private static String call(String arguments) {
    return "{\"id\": 1, \"method\": \"tools/call\", \"params\": {\"name\": \"a\", \"arguments\": "
        + arguments
        + "}}";
  }

  @Test
  void a_batch_of_many_is_refused() throws Exception {
    String ping = "{\"id\": 1, \"method\": \"ping\"}";
    assertEquals("taken", send("/mcp", "[" + (ping + ",").repeat(9) + ping + "]").body());
    assertRefused(400, -32600, send("/mcp", "[" + (ping + ",").repeat(10) + ping + "]"));
  }

  @Test
  void a_long_id_is_refused() throws Exception {
    String long_ = "{\"id\": \"" + "a".repeat(201) + "\", \"method\": \"ping\"}";
    assertRefused(400, -32600, send("/mcp", long_));
  }

  /**
   * The largest sheet the schema allows, in compact form as assistants write it, in a complete
   * fitting.
   */
  @Test
  void a_fitting_with_the_largest_sheet_is_let_pass() throws Exception {
    String sheet = new YAMLMapper().readTree(LargestSheet.yaml(false)).toString();
    String message = call("{\"pattern\": {\"inline\": " + sheet + "}, \"signs\": []}");
    assertTrue(message.length() + 10 * 1024 <= 64 * 1024, message.length() + " bytes");
    assertEquals("taken", send("/mcp", message).body());
  }

  @Test
  void a_message_too_large_is_rejected_with_or_without_a_declared_length() throws Exception {
    String large = call("\"" + "a".repeat(64 * 1024) + "\"");
    HttpResponse<String> told = send("/mcp", large);
    assertRefused(413, -32000, told);
    assertTrue(told.body().contains("64 KB"), told.body());
    HttpRequest untold =
        HttpRequest.newBuilder(address("/mcp"))
            .POST(
                BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(large.getBytes(UTF_8))))
            .build();
    assertEquals(
        413, HttpClient.newHttpClient().send(untold, BodyHandlers.ofString()).statusCode());
  }

  private static void assertRefused(int status, int code, HttpResponse<String> answer) {
    assertEquals(status, answer.statusCode(), answer.body());
    JsonObject said = new JsonObject(answer.body());
    assertEquals("2.0", said.getString("jsonrpc"), answer.body());
    assertEquals(code, said.getJsonObject("error").getInteger("code"), answer.body());
  }
}
