package easewright.mcp;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;

import easewright.LogListening;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Measurements are personal: nothing an assistant sends reaches the log, valid or not, and
 * malformed input does not fill it with stack traces.
 */
@QuarkusTest
class SilentLogTest extends LogListening {
  private static final String TELLING = "ninetythree-centimetres";

  private static ValidatableResponse send(String session, String body) {
    var request =
        given().accept("application/json, text/event-stream").contentType("application/json");
    return (session == null ? request : request.header("Mcp-Session-Id", session))
        .body(body)
        .post("/mcp")
        .then();
  }

  private static String session() {
    String session =
        send(
                null,
                """
                {"jsonrpc": "2.0", "id": 1, "method": "initialize", "params": {
                  "protocolVersion": "2025-11-25", "capabilities": {},
                  "clientInfo": {"name": "assistant", "version": "1"}}}
                """)
            .extract()
            .header("Mcp-Session-Id");
    send(session, "{\"jsonrpc\": \"2.0\", \"method\": \"notifications/initialized\"}");
    return session;
  }

  @Test
  void what_an_assistant_sends_is_not_logged() {
    String session = session();
    for (String arguments :
        List.of(
            "{\"body\": {\"bust\": \"" + TELLING + "\"}}", // rejected by the service
            "[\"" + TELLING + "\"]", // rejected by the protocol
            TELLING)) { // not JSON
      send(
              session,
              "{\"jsonrpc\": \"2.0\", \"id\": 2, \"method\": \"tools/call\", \"params\":"
                  + " {\"name\": \"answer_fitting\", \"arguments\": "
                  + arguments
                  + "}}")
          .body(not(containsString("Exception")));
    }
    assertEquals(
        List.of(),
        log.lines().stream()
            .filter(line -> line.contains("ninetythree") || line.contains("\tat "))
            .toList());
  }
}
