package easewright.http;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.Header;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** By default, no other site's page may read answers (WHATWG Fetch). */
@QuarkusTest
class CorsOffTest {
  private static List<String> corsHeaders(String method, String form, String body) {
    return given()
        .header("Origin", "https://board.example")
        .header("Access-Control-Request-Method", "POST")
        .header("Access-Control-Request-Headers", "content-type")
        .contentType(form)
        .body(body.getBytes(UTF_8))
        .request(method, "/v1/fittings")
        .headers()
        .asList()
        .stream()
        .map(Header::getName)
        .filter(name -> name.toLowerCase(Locale.ROOT).startsWith("access-control-"))
        .toList();
  }

  @Test
  void no_answer_is_shared_with_another_origin() {
    String fitting = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";
    assertEquals(List.of(), corsHeaders("POST", "application/json", fitting));
    assertEquals(List.of(), corsHeaders("POST", "application/x-ndjson", fitting));
    assertEquals(List.of(), corsHeaders("OPTIONS", "application/json", ""));
  }
}
