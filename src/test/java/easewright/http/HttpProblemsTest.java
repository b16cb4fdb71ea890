package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Rejections have their status from RFC 9110 section 15.5 and the form of RFC 9457 section 3: media
 * type application/problem+json with type, title, status and detail.
 */
@QuarkusTest
class HttpProblemsTest {
  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"band-rides-up-at-the-back\"}]}";

  private static ValidatableResponse isProblem(
      ValidatableResponse response, int status, String type) {
    return response
        .statusCode(status)
        .contentType("application/problem+json")
        .header("Cache-Control", "no-store")
        .body("type", equalTo("/problems/" + type))
        .body("status", equalTo(status))
        .body("title", not(equalTo("")))
        .body("detail", not(equalTo("")));
  }

  private static ValidatableResponse post(String body) {
    return given().contentType(ContentType.JSON).body(body).post("/v1/fittings").then();
  }

  @Test
  void malformed_json_is_unreadable_and_its_line_and_column_are_reported() {
    isProblem(post("{\n  \"signs\": [,]\n}"), 400, "unreadable")
        .body("faults[0].pointer", equalTo(""))
        .body("faults[0].problem", containsString("line 2, column"))
        .body("faults[0].problem", not(containsString("Unexpected character")));
  }

  @Test
  void a_bare_number_is_unreadable_with_a_pointer_to_it() {
    isProblem(post("{\"body\": {\"bust\": 94, \"underbust\": \"77 cm\"}}"), 400, "unreadable")
        .body("faults", hasSize(1))
        .body("faults[0].pointer", equalTo("/body/bust"))
        .body("faults[0].remedy", containsString("cm"));
  }

  @Test
  void inches_written_for_centimetres_are_impossible_with_the_likely_meaning() {
    isProblem(
            post("{\"body\": {\"bust\": \"94 in\", \"underbust\": \"77 cm\"}}"), 422, "impossible")
        .body("faults[0].pointer", equalTo("/body/bust"))
        .body("faults.remedy", hasItem(containsString("94 cm")));
  }

  @Test
  void an_address_that_is_nothing_is_not_found() {
    isProblem(given().get("/v1/nothing").then(), 404, "not-found");
    isProblem(given().get("/nothing-at-all").then(), 404, "not-found");
    isProblem(given().get("/rules/no-such-rule").then(), 404, "not-found");
    isProblem(given().get("/v1/pattern-sheets/no-such-sheet").then(), 404, "not-found");
    isProblem(given().get("/examples/..%2Fopenapi.yaml").then(), 404, "not-found");
  }

  @Test
  void another_method_is_refused_and_the_right_one_named() {
    isProblem(given().get("/v1/fittings").then(), 405, "method")
        .header("Allow", containsString("POST"));
  }

  @Test
  void a_form_that_cannot_be_given_is_not_acceptable() {
    isProblem(
        given()
            .contentType(ContentType.JSON)
            .accept("application/pdf")
            .body(ONE_SIGN)
            .post("/v1/fittings")
            .then(),
        406,
        "not-acceptable");
  }

  @Test
  void a_form_that_is_not_taken_is_unsupported() {
    isProblem(
        given().contentType("text/plain").body(ONE_SIGN).post("/v1/fittings").then(),
        415,
        "media-type");
  }

  /** Sent over a raw socket, since clients correct or reject such headers. */
  @Test
  void malformed_headers_are_problems_that_reveal_no_internals() throws IOException {
    for (String[] broken :
        new String[][] {
          {"Host: localhost\r\nContent-Type: zq9", "415", "media-type"},
          {"Host: localhost\r\nContent-Type: ", "415", "media-type"},
          {"Host: localhost:99999\r\nContent-Type: application/json", "400", "refused"},
          {"Host: <b>zq9</b>\r\nContent-Type: application/json", "400", "refused"},
          {"Content-Type: application/json", "400", "refused"}
        }) {
      try (Socket socket = new Socket("localhost", RestAssured.port)) {
        String request =
            "POST /v1/size-checks HTTP/1.1\r\n%s\r\nContent-Length: 2\r\nConnection: close\r\n\r\n{}";
        socket
            .getOutputStream()
            .write(request.formatted(broken[0]).getBytes(StandardCharsets.US_ASCII));
        String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(answer.startsWith("HTTP/1.1 " + broken[1]), answer);
        assertTrue(answer.contains("application/problem+json"), answer);
        assertTrue(answer.contains("\"/problems/" + broken[2] + "\""), answer);
        assertFalse(answer.contains("zq9") || answer.contains("vertx"), answer);
      }
    }
  }

  @Test
  void a_request_above_256_kilobytes_is_too_large() {
    isProblem(post(" ".repeat(256 * 1024 + 1)), 413, "too-large");
  }

  /** Sends only the head: the connection may be closed while a body is being sent. */
  @Test
  void a_request_far_too_large_is_refused_before_it_is_read() throws IOException {
    try (Socket socket = new Socket("localhost", RestAssured.port)) {
      String head =
          """
          POST /v1/fittings HTTP/1.1\r
          Host: localhost\r
          Content-Type: application/json\r
          Content-Length: %d\r
          \r
          """;
      socket
          .getOutputStream()
          .write(head.formatted(2 * 1024 * 1024).getBytes(StandardCharsets.US_ASCII));
      var answer =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
      assertTrue(answer.readLine().startsWith("HTTP/1.1 413 "));
    }
  }

  @Test
  void the_problem_is_json_whatever_form_was_asked_for() {
    isProblem(
        given()
            .contentType(ContentType.JSON)
            .accept("text/markdown")
            .body("{}")
            .post("/v1/fittings")
            .then(),
        422,
        "impossible");
  }

  @Test
  void an_answer_comes_as_json_markdown_or_a_page_and_is_never_kept() {
    String[][] forms = {
      {"*/*", "application/json"},
      {"application/json", "application/json"},
      {"text/markdown", "text/markdown"},
      {"text/html", "text/html"},
      {"text/html,application/xhtml+xml,*/*;q=0.8", "text/html"},
    };
    for (String[] form : forms) {
      given()
          .contentType(ContentType.JSON)
          .accept(form[0])
          .body(ONE_SIGN)
          .post("/v1/fittings")
          .then()
          .statusCode(200)
          .contentType(startsWith(form[1]))
          .header("Cache-Control", "no-store");
    }
  }

  @Test
  void the_contract_its_copies_and_its_pages_are_served() {
    given().get("/openapi.yaml").then().statusCode(200).body(startsWith("openapi: 3.1.0"));
    given()
        .get("/openapi.json")
        .then()
        .statusCode(200)
        .body("openapi", equalTo("3.1.0"))
        .body(
            "paths.'/v1/fittings'.post.requestBody.content.'application/json'.examples.'one-sign'"
                + ".value.signs[0].sign",
            equalTo("straps-slip-off"));
    given()
        .get("/openapi-3.0.json")
        .then()
        .statusCode(200)
        .body("openapi", startsWith("3.0"))
        .body("paths.'/v1/fittings'.post.operationId", equalTo("answerFitting"));
    for (String address : List.of("/openapi-3.0", "/openapi-3.0.yaml")) {
      given().get(address).then().statusCode(200).body(startsWith("---\nopenapi: \"3.0"));
    }
    given().get("/examples/one-sign.json").then().statusCode(200).contentType(ContentType.JSON);
    given().get("/api/").then().statusCode(200).contentType(ContentType.HTML);
    given().accept("text/html").get("/rules").then().statusCode(200).contentType(ContentType.HTML);
  }
}
