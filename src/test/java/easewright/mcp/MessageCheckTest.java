package easewright.mcp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.runtime.configuration.MemorySize;
import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import java.io.IOException;
import java.math.BigInteger;
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

/**
 * What stands before the protocol's extension, here before one that says "taken" or nothing. Codes
 * by JSON-RPC 2.0, section 5.1; required members by the schema of the Model Context Protocol,
 * revision 2025-11-25 (from memory).
 */
class MessageCheckTest {
  private static final MemorySize MEGABYTE = new MemorySize(BigInteger.valueOf(1 << 20));

  private final Vertx vertx = Vertx.vertx();
  private HttpServer server;

  @BeforeEach
  void serve() throws Exception {
    Router router = Router.router(vertx);
    new MessageCheck("mcp", MEGABYTE, Duration.ofMillis(20)).register(router);
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
    URI address = URI.create("http://127.0.0.1:" + server.actualPort() + path);
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(address).POST(BodyPublishers.ofString(body)).build(),
            BodyHandlers.ofString());
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
          {"id": 1, "method": "tools/list", "params": 0.5}                                | -32602
          {"id": 1, "method": "tools/call"}                                               | -32602
          {"id": 1, "method": "tools/call", "params": {"name": 3}}                        | -32602
          {"id": 1, "method": "tools/call", "params": {"name": "a", "arguments": []}}     | -32602
          {"id": 1, "method": "tools/call", "params": {"name": "a", "arguments": {"b": [1e400]}}} | -32602
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
          no JSON, which is the extension's to refuse
          """)
  void any_other_message_is_let_pass(String message) throws Exception {
    assertEquals("taken", send("/mcp", message).body());
  }

  @Test
  void a_message_that_is_never_answered_is_given_up() throws Exception {
    HttpResponse<String> answer = send("/mcp/silent", "{\"id\": 1, \"method\": \"ping\"}");
    assertEquals(503, answer.statusCode());
    assertEquals("1", answer.headers().firstValue("Retry-After").orElseThrow());
    assertTrue(answer.body().contains("/problems/took-too-long"), answer.body());
  }

  @Test
  void a_body_too_large_is_refused() throws Exception {
    String large = "{\"id\": \"" + "a".repeat((1 << 20) + 1) + "\", \"method\": \"ping\"}";
    assertEquals(413, send("/mcp", large).statusCode());
  }
}
