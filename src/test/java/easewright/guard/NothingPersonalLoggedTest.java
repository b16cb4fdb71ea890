package easewright.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.LogListening;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Measurements, words, names and keys reach neither the log nor a problem, whether a request is
 * valid, faulty, or meets a failing store (OWASP Logging Cheat Sheet, "Data to exclude").
 */
@Tag("long")
@QuarkusTest
@TestProfile(NothingPersonalLoggedTest.NoStore.class)
class NothingPersonalLoggedTest extends LogListening {
  private static final String WORD = "zq7word";
  private static final String LENGTH = "93.7";
  private static final String KEY = "ewo-zq7zq7zq7zq7zq7z-" + "zq7z".repeat(10);
  private static final List<String> PERSONAL = List.of("zq7", LENGTH);

  /** A store that can never be reached. */
  public static class NoStore implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.clinic.url", "jdbc:postgresql://127.0.0.1:1/none?connectTimeout=1",
          "easewright.clinic.user", "nobody",
          "easewright.clinic.password", "zq7password");
    }
  }

  private static Response post(String path, String form, String body) {
    return given()
        .header("Authorization", "Bearer " + KEY)
        .contentType(form)
        .body(body.getBytes(UTF_8))
        .post(path);
  }

  private void nothingPersonalWasLogged() {
    for (String personal : PERSONAL) {
      assertEquals(
          List.of(),
          log.lines().stream().filter(line -> line.contains(personal)).toList(),
          personal);
    }
  }

  @Test
  void good_requests_are_not_logged() {
    String body = "{\"body\": {\"bust\": \"" + LENGTH + " cm\", \"underbust\": \"77 cm\"}}";
    for (String path : List.of("/v1/fittings", "/v1/size-checks")) {
      assertEquals(200, post(path, "application/json", body).statusCode(), path);
    }
    String text = "{\"text\": \"The straps slip off, says " + WORD + ".\"}";
    assertEquals(200, post("/v1/fittings", "application/json", text).statusCode());
    assertEquals(200, post("/v1/intakes", "application/json", text).statusCode());
    assertEquals(200, post("/v1/fittings", "application/x-ndjson", text + "\n").statusCode());
    assertEquals(200, given().get("/rules?q=" + WORD).statusCode());
    nothingPersonalWasLogged();
  }

  @Test
  void faulty_requests_are_not_logged() {
    for (String body :
        List.of(
            "{\"" + WORD + "\": \"" + LENGTH + " cm\"}",
            "{\"body\": {\"bust\": \"" + LENGTH + " in\", \"underbust\": \"" + WORD + "\"}}",
            "{\"signs\": \"" + WORD,
            WORD,
            "{\"text\": 1e999999999, \"" + WORD + "\": " + LENGTH + "}")) {
      for (String path :
          List.of(
              "/v1/fittings",
              "/v1/cut-plans",
              "/v1/size-checks",
              "/v1/cloth-checks",
              "/v1/pattern-sheets/checks",
              "/v1/intakes")) {
        Response answer = post(path, "application/json", body);
        assertTrue(
            answer.statusCode() == 400 || answer.statusCode() == 422,
            path + " " + answer.statusCode());
        assertFalse(answer.asString().contains("Exception"), answer.asString());
      }
      post("/v1/fittings", "application/x-ndjson", body + "\n");
      post("/v1/pattern-sheets/checks", "application/yaml", body);
      given().formParam("text", WORD).formParam("/body/bust", LENGTH + WORD).post("/desk");
    }
    nothingPersonalWasLogged();
  }

  @Test
  void server_errors_are_logged_without_the_content_of_the_request() {
    String opening = "{\"name\": \"" + WORD + "\", \"organiser\": \"" + WORD + "\"}";
    Response failed = post("/v1/clinics", "application/json", opening);
    assertEquals(503, failed.statusCode());
    assertEquals("application/problem+json", failed.contentType());
    for (String told : List.of("zq7", "jdbc", "Exception", "postgres", "easewright.")) {
      assertFalse(failed.asString().contains(told), failed.asString());
    }
    given().header("Authorization", "Bearer " + KEY).get("/v1/clinics/zq7zq7zq7zq7zq7z");
    given().get("/v1/wearer-links/" + KEY);
    given().cookie("easewright-key", KEY).get("/desk/clinics/zq7zq7zq7zq7zq7z");
    assertEquals(
        List.of(),
        log.lines().stream().filter(line -> line.contains("failed")).toList(),
        "what is wrong with the store was told once, not with each request");
    nothingPersonalWasLogged();
  }
}
