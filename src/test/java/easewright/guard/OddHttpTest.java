package easewright.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Malformed and malicious HTTP. */
@QuarkusTest
class OddHttpTest {
  private static final int PATIENCE_MS = 5000;

  /** Everything received until the service closes the connection. */
  private static String exchange(String sent) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
      socket.setSoTimeout(PATIENCE_MS);
      socket.getOutputStream().write(sent.getBytes(ISO_8859_1));
      return new String(socket.getInputStream().readAllBytes(), ISO_8859_1);
    }
  }

  /**
   * RFC 9112, section 6.1: a message with both lengths must be rejected or read as chunks, and its
   * connection closed; section 6.3: a message whose coding does not end in "chunked" has no length.
   * So a request behind such a message, which a proxy may take for its body, is rejected too.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Transfer-Encoding: xchunked\r\nContent-Length: 2",
        "Content-Length: 2\r\nTransfer-Encoding: xchunked",
        "Transfer-Encoding: identity\r\nContent-Length: 2",
        "Transfer-Encoding: chunked\r\nContent-Length: 2",
        "Transfer-Encoding: chunked, identity\r\nContent-Length: 2",
        "Transfer-Encoding: chunked\r\nTransfer-Encoding: x\r\nContent-Length: 2",
        "Transfer-Encoding: \"chunked\"\r\nContent-Length: 2",
        "Transfer-Encoding: gzip\r\nContent-Length: 2",
        "Transfer-Encoding:\r\nContent-Length: 2",
        "Transfer-Encoding: xchunked"
      })
  void a_request_of_doubtful_length_is_refused_and_its_connection_closed(String lengths)
      throws IOException {
    String told =
        exchange(
            "POST /v1/fittings HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                + lengths
                + "\r\n\r\n{}GET /v1/signs HTTP/1.1\r\nHost: localhost\r\n\r\n");
    assertTrue(told.startsWith("HTTP/1.1 400 "), told);
    assertFalse(told.contains("HTTP/1.1 200 "), told);
  }

  /** RFC 9110, section 8.3.1: a parameter has a value, and quotes come in pairs. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "charset=\"",
        "charset=",
        "charset",
        "charset=\"\"",
        "charset=nonsense",
        "=",
        "\""
      })
  void a_media_type_with_an_odd_parameter_is_not_a_server_error(String parameter)
      throws IOException {
    for (String path : new String[] {"/v1/fittings", "/v1/intakes", "/desk/answer", "/mcp"}) {
      String told =
          exchange(
              "POST "
                  + path
                  + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                  + "Content-Type: application/json; "
                  + parameter
                  + "\r\nContent-Length: 2\r\n\r\n{}");
      assertTrue(told.matches("(?s)HTTP/1.1 [24].*"), path + ": " + told);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"chunked", "Chunked"})
  void chunks_are_read(String coding) throws IOException {
    String told =
        exchange(
            "POST /v1/intakes HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Content-Type: application/json\r\nTransfer-Encoding: "
                + coding
                + "\r\n\r\n17\r\n{\"text\": \"straps slip\"}\r\n0\r\n\r\n");
    assertTrue(told.startsWith("HTTP/1.1 200 "), told);
  }

  /** RFC 9110, section 10.2.2: Location takes a relative reference. */
  @Test
  void redirects_repeat_no_host() throws IOException {
    for (String path : List.of("/", "/desk/clinics")) {
      String told =
          exchange("GET " + path + " HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n");
      assertTrue(told.startsWith("HTTP/1.1 303 "), told);
      assertTrue(told.toLowerCase().contains("location: /desk"), told);
      assertFalse(told.contains("evil.example"), told);
    }
  }

  @Test
  void links_repeat_no_host_that_is_not_known() {
    for (String host : List.of("evil.example", "203.0.113.9", "localhost.evil.example")) {
      for (String form : List.of("text/markdown", "text/html", "text/plain")) {
        String told =
            given()
                .header("Host", host)
                .accept(form)
                .contentType(ContentType.JSON)
                .body("{\"signs\": [{\"sign\": \"band-rides-up-at-the-back\"}]}")
                .post("/v1/fittings?length=long")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertFalse(told.contains(host), told);
      }
    }
  }

  /**
   * "qs" is the server's own preference for a media type, not one of its parameters (RFC 6838,
   * 4.3).
   */
  @Test
  void the_media_type_of_a_response_shows_no_preference() {
    for (String form : List.of("text/markdown", "text/html", "text/plain")) {
      Response answer =
          given()
              .accept(form)
              .contentType(ContentType.JSON)
              .body("{\"signs\": [{\"sign\": \"straps-slip-off\"}]}")
              .post("/v1/fittings");
      assertEquals(form + ";charset=UTF-8", answer.contentType());
    }
    for (String form : List.of("text/html", "application/json")) {
      String told = given().accept(form).get("/rules").contentType();
      assertFalse(told.contains("qs"), told);
    }
  }
}
