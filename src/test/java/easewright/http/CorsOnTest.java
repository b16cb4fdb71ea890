package easewright.http;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsStringIgnoringCase;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.specification.RequestSpecification;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Only pages of the configured origin may call. A POST of JSON is not a "simple" request, so a
 * browser sends a preflight (WHATWG Fetch, "CORS-preflight request").
 */
@Tag("long")
@QuarkusTest
@TestProfile(CorsOnTest.OneOrigin.class)
class CorsOnTest {
  private static final String BOARD = "https://board.example";

  /** The setting that the README tells operators to use. */
  public static class OneOrigin implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("quarkus.http.cors.enabled", "true", "quarkus.http.cors.origins", BOARD);
    }
  }

  private static RequestSpecification preflight(String origin) {
    return given()
        .header("Origin", origin)
        .header("Access-Control-Request-Method", "POST")
        .header("Access-Control-Request-Headers", "content-type");
  }

  private static RequestSpecification fitting(String origin, String form) {
    return given()
        .header("Origin", origin)
        .contentType(form)
        .body("{\"signs\": [{\"sign\": \"straps-slip-off\"}]}".getBytes(UTF_8));
  }

  @Test
  void a_page_of_the_origin_may_send_json() {
    preflight(BOARD)
        .options("/v1/fittings")
        .then()
        .statusCode(200)
        .header("Access-Control-Allow-Origin", equalTo(BOARD))
        .header("Access-Control-Allow-Methods", containsStringIgnoringCase("POST"))
        .header("Access-Control-Allow-Headers", containsStringIgnoringCase("content-type"));
    for (String form : new String[] {"application/json", "application/x-ndjson"}) {
      fitting(BOARD, form)
          .post("/v1/fittings")
          .then()
          .statusCode(200)
          .header("Access-Control-Allow-Origin", equalTo(BOARD));
    }
  }

  @Test
  void a_page_of_another_origin_is_refused() {
    String stranger = "https://stranger.example";
    preflight(stranger)
        .options("/v1/fittings")
        .then()
        .header("Access-Control-Allow-Origin", nullValue());
    for (String form : new String[] {"application/json", "application/x-ndjson"}) {
      fitting(stranger, form)
          .post("/v1/fittings")
          .then()
          .statusCode(403)
          .header("Access-Control-Allow-Origin", nullValue());
    }
  }
}
