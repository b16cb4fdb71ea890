package easewright.http;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** An answer that times out is a 503 (RFC 9110, 15.6.4) that says so, whatever the request. */
@Tag("long")
@QuarkusTest
@TestProfile(TookTooLongTest.NoTime.class)
class TookTooLongTest {
  /** A service with a time limit of nearly zero. */
  public static class NoTime implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("easewright.limit.time", "PT0.000001S");
    }
  }

  @Test
  void every_kind_of_answer_times_out_with_the_same_problem() throws IOException {
    for (Map.Entry<String, String> asked :
        Map.of(
                "/v1/fittings", "first-fitting",
                "/v1/intakes", "a-post",
                "/v1/cut-plans", "cut-plan-whole",
                "/v1/size-checks", "size-check-sheet",
                "/v1/cloth-checks", "cloth-check-layers")
            .entrySet()) {
      given()
          .contentType("application/json")
          .body(Files.readAllBytes(Path.of("openapi/examples/" + asked.getValue() + ".json")))
          .post(asked.getKey())
          .then()
          .statusCode(503)
          .contentType("application/problem+json")
          .header("Retry-After", "5")
          .body("type", equalTo("/problems/took-too-long"));
    }
    given()
        .contentType("text/plain")
        .body("The straps slip off.")
        .post("/v1/intakes")
        .then()
        .statusCode(503)
        .header("Retry-After", "5")
        .body("type", equalTo("/problems/took-too-long"));
    given().queryParam("q", "straps slip off").get("/rules").then().statusCode(503);
    given()
        .contentType("application/x-ndjson")
        .body("{\"signs\": [{\"sign\": \"straps-slip-off\"}]}\n".getBytes(UTF_8))
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .body(containsString("\"status\":503"));
    given()
        .contentType("application/yaml")
        .body(Files.readAllBytes(Path.of("openapi/examples/small-sheet.yaml")))
        .post("/v1/pattern-sheets/checks")
        .then()
        .statusCode(503);
  }
}
