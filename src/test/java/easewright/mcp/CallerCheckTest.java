package easewright.mcp;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.ValidatableResponse;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * MCP 2025-11-25, basic/transports, "Security Warning": "Servers MUST validate the Origin header on
 * all incoming connections to prevent DNS rebinding attacks. If the Origin header is present and
 * invalid, servers MUST respond with HTTP 403 Forbidden." Origins follow RFC 6454, section 6.2;
 * names under .example are those of RFC 2606.
 */
@Tag("long")
@QuarkusTest
@TestProfile(CallerCheckTest.OneMoreHost.class)
class CallerCheckTest {

  /** A service that is also reachable as "fit.example". */
  public static class OneMoreHost implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("easewright.mcp.hosts", "fit.example");
    }
  }

  private static ValidatableResponse greet(String header, String value) {
    return given()
        .header(header, value)
        .accept("application/json, text/event-stream")
        .contentType("application/json")
        .body(
            """
            {"jsonrpc": "2.0", "id": 1, "method": "initialize", "params": {
              "protocolVersion": "2025-11-25", "capabilities": {},
              "clientInfo": {"name": "page", "version": "1"}}}
            """)
        .post("/mcp")
        .then();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://localhost:3000",
        "https://127.0.0.1",
        "http://[::1]:8080",
        "http://LOCALHOST",
        "https://fit.example"
      })
  void a_page_of_this_machine_or_a_named_host_may_call(String origin) {
    greet("Origin", origin).statusCode(200).body("result.serverInfo.name", equalTo("easewright"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://rebound.example",
        "http://localhost.rebound.example",
        "http://127.0.0.1.rebound.example:8080",
        "http://localhost@rebound.example",
        "http://other.fit.example",
        "null",
        "not an origin"
      })
  void a_page_from_elsewhere_is_forbidden(String origin) {
    greet("Origin", origin)
        .statusCode(403)
        .contentType("application/problem+json")
        .body("status", equalTo(403));
  }

  @Test
  void a_name_that_was_bent_to_this_machine_is_forbidden() {
    greet("Host", "rebound.example").statusCode(403);
    greet("Host", "fit.example").statusCode(200);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/mcp", "/mcp/", "/mcp/sse", "/mcp/messages/1", "/x/../mcp"})
  void every_address_of_the_protocol_is_guarded(String path) {
    given().header("Origin", "http://rebound.example").get(path).then().statusCode(403);
  }

  @Test
  void addresses_that_are_not_the_protocols_are_let_through() {
    given().header("Origin", "http://rebound.example").get("/v1/signs").then().statusCode(200);
    given().header("Origin", "http://rebound.example").get("/mcpx").then().statusCode(404);
  }
}
