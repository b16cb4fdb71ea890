package easewright.http;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Newline-delimited JSON: RFC 8259 values, a line feed after each. The transfer is watched at the
 * socket, in chunks as RFC 9112 section 7.1 writes them, since an HTTP client may buffer.
 */
@QuarkusTest
@Timeout(120)
class BulkTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";

  private static List<JsonNode> answers(String body) throws IOException {
    byte[] answered =
        given()
            .contentType("application/x-ndjson")
            .body(body.getBytes(UTF_8))
            .post("/v1/fittings")
            .then()
            .statusCode(200)
            .contentType("application/x-ndjson")
            .header("Cache-Control", "no-store")
            .extract()
            .asByteArray();
    List<JsonNode> answers = new ArrayList<>();
    for (String line : new String(answered, UTF_8).lines().toList()) {
      answers.add(JSON.readTree(line));
    }
    return answers;
  }

  private static JsonNode single(String body) throws IOException {
    return JSON.readTree(
        given().contentType("application/json").body(body).post("/v1/fittings").asByteArray());
  }

  @Test
  void each_line_is_answered_in_order_as_if_sent_separately() throws IOException {
    List<String> lines = new ArrayList<>();
    for (JsonNode request : Examples.requests("/v1/fittings")) {
      if (!single(request.toString()).has("status")) {
        lines.add(request.toString());
      }
    }
    assertTrue(lines.size() > 4);
    List<JsonNode> answers = answers(String.join("\n", lines));
    assertEquals(lines.size(), answers.size());
    for (int i = 0; i < lines.size(); i++) {
      assertEquals(single(lines.get(i)), answers.get(i));
    }
  }

  @Test
  void a_faulty_line_is_answered_by_its_problem_and_later_lines_go_on() throws IOException {
    String impossible = "{\"body\": {\"bust\": \"94 in\", \"underbust\": \"77 cm\"}}";
    List<JsonNode> answers = answers(impossible + "\r\n\r\n\n[1,\n" + ONE_SIGN + "\n");
    assertEquals(3, answers.size());
    assertEquals(1, answers.get(0).path("line").intValue());
    assertEquals(single(impossible).path("faults"), answers.get(0).path("faults"));
    assertEquals(422, answers.get(0).path("status").intValue());
    assertEquals(4, answers.get(1).path("line").intValue());
    assertEquals(400, answers.get(1).path("status").intValue());
    assertTrue(answers.get(1).at("/faults/0/problem").textValue().contains("at line 4, column"));
    assertEquals(single(ONE_SIGN), answers.get(2));
  }

  @Test
  void a_line_above_256_kilobytes_is_too_large_and_the_next_is_answered() throws IOException {
    List<JsonNode> answers = answers(" ".repeat(256 * 1024) + "{}\n" + ONE_SIGN);
    assertEquals(413, answers.get(0).path("status").intValue());
    assertEquals("/problems/too-large", answers.get(0).path("type").textValue());
    assertEquals(1, answers.get(0).path("line").intValue());
    assertEquals(single(ONE_SIGN), answers.get(1));
  }

  @Test
  void an_answer_comes_before_the_next_line_is_sent() throws IOException {
    try (RawExchange exchange = new RawExchange(RestAssured.port)) {
      exchange.head("Transfer-Encoding: chunked");
      for (int line = 1; line <= 3; line++) {
        exchange.chunk("[" + line + "\n");
        assertEquals(line, JSON.readTree(exchange.answerLine()).path("line").intValue());
      }
      // An incomplete line waits for its rest.
      exchange.chunk(ONE_SIGN.substring(0, 10));
      exchange.chunk(ONE_SIGN.substring(10) + "\n");
      assertEquals(single(ONE_SIGN), JSON.readTree(exchange.answerLine()));
      exchange.chunk("[5");
      exchange.lastChunk();
      assertEquals(5, JSON.readTree(exchange.answerLine()).path("line").intValue());
      assertEquals(null, exchange.answerLine());
    }
  }

  /** Each answer is about ten times its line, so network buffers fill soon. */
  @Test
  void the_service_stops_reading_from_a_client_that_does_not_read_answers() throws Exception {
    try (RawExchange exchange = new RawExchange(RestAssured.port)) {
      exchange.head("Transfer-Encoding: chunked");
      String lines = (ONE_SIGN + " ".repeat(1000) + "\n").repeat(64);
      int most = 1024;
      int sent = exchange.chunksUntilStuck(lines, most);
      assertTrue(sent < most / 2, sent + " of " + most + " chunks of " + lines.length() + " bytes");
      // Once the client reads again, it continues.
      JsonNode expected = single(ONE_SIGN);
      for (int answered = 0; answered < 500; answered++) {
        assertEquals(expected, JSON.readTree(exchange.answerLine()));
      }
    }
  }

  @Test
  void the_bound_of_a_megabyte_is_for_other_forms_only() throws IOException {
    String padded = ONE_SIGN + " ".repeat(200_000) + "\n";
    assertEquals(8, answers(padded.repeat(8)).size());
    // The head alone: the service hangs up while a longer body is still being sent.
    try (RawExchange exchange = new RawExchange(RestAssured.port)) {
      exchange.head("application/json", "Content-Length: " + 8 * padded.length());
      assertTrue(exchange.status().startsWith("HTTP/1.1 413"), exchange.status());
    }
  }

  @Test
  void a_request_above_its_own_size_limit_is_rejected_before_it_is_read() throws IOException {
    try (RawExchange exchange = new RawExchange(RestAssured.port)) {
      exchange.head("Content-Length: " + (256L * 1024 * 1024 + 1));
      assertTrue(exchange.status().startsWith("HTTP/1.1 413"));
    }
  }

  @Test
  void an_empty_request_gets_an_empty_answer() throws IOException {
    assertEquals(List.of(), answers(""));
    assertEquals(List.of(), answers("\n \n"));
  }

  @Test
  void answers_come_in_no_other_form() {
    given()
        .contentType("application/x-ndjson")
        .accept("text/markdown")
        .body(ONE_SIGN.getBytes(UTF_8))
        .post("/v1/fittings")
        .then()
        .statusCode(406)
        .contentType("application/problem+json")
        .body("detail", containsString("application/x-ndjson"));
    given()
        .contentType("application/x-ndjson")
        .body(ONE_SIGN.getBytes(UTF_8))
        .post("/v1/size-checks")
        .then()
        .statusCode(415)
        .body("type", equalTo("/problems/media-type"));
  }
}
