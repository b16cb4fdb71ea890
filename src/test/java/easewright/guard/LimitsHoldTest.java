package easewright.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.matchesRegex;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.fuzz.KeptClinic;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.Socket;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits count only the clients they are meant for: made-up values do not bypass them, and a valid
 * key keeps working whatever others do at the same address (OWASP API4:2023; Authentication Cheat
 * Sheet, "Account Lockout", on locking out by others' failures). Each test has its own address,
 * reported by a proxy that is trusted here.
 */
@Tag("long")
@QuarkusTest
@TestProfile(LimitsHoldTest.Counting.class)
class LimitsHoldTest {
  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";
  private static final String NO_KEY =
      "ewo-aaaaaaaaaaaaaaaa-aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";
  private static final String NO_LINK =
      "eww-aaaaaaaaaaaaaaaa-aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";
  private static final String COOKIE = "easewright-key";
  private static final int ANSWERS = 5;
  private static final int WRONG_KEYS = 3;
  private static final AtomicInteger ADDRESSES = new AtomicInteger();

  /** Low limits, and a trusted proxy. */
  public static class Counting implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.limit.answers", ANSWERS + " in 1H",
          "easewright.limit.wrong-keys", WRONG_KEYS + " in 1H",
          "easewright.limit.lines", "4 in 1H",
          "quarkus.http.proxy.proxy-address-forwarding", "true",
          "easewright.clinic.store", "target/limits-store");
    }
  }

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private KeptClinic clinic;
  private String address;

  @BeforeEach
  void stock() {
    clinic = KeptClinic.in(store, fittings);
    moveOn();
  }

  private void moveOn() {
    address = "192.0.2." + ADDRESSES.incrementAndGet();
  }

  private RequestSpecification from() {
    return given().redirects().follow(false).header("X-Forwarded-For", address);
  }

  private static Response fitting(RequestSpecification from) {
    return from.contentType("application/json").body(ONE_SIGN).post("/v1/fittings");
  }

  private static Response signIn(RequestSpecification from, String key) {
    return from.accept("text/html").formParam("key", key).post("/desk/sign-in");
  }

  private static long answered(int times, Stream<Response> responses) {
    return responses.limit(times).filter(one -> one.statusCode() != 429).count();
  }

  static List<Map<String, String>> madeUp() {
    return List.of(
        Map.of(),
        Map.of("Authorization", "x"),
        Map.of("Authorization", "Basic eDp5"),
        Map.of("Authorization", "Bearer x"),
        Map.of("Authorization", "Bearer " + NO_KEY),
        Map.of("Cookie", COOKIE + "=x"),
        Map.of("Cookie", COOKIE + "=" + NO_KEY),
        Map.of("Cookie", COOKIE + "=x", "Authorization", "Bearer x"));
  }

  @ParameterizedTest
  @MethodSource("madeUp")
  void a_made_up_key_gets_no_more_answers(Map<String, String> headers) {
    long programs = answered(12, Stream.generate(() -> fitting(from().headers(headers))));
    assertTrue(programs <= ANSWERS, programs + " answers");
    moveOn();
    long pages =
        answered(
            12,
            Stream.generate(
                () ->
                    from()
                        .headers(headers)
                        .accept("text/html")
                        .formParam("text", "The straps slip off.")
                        .post("/desk/answer")));
    assertTrue(pages <= ANSWERS, pages + " pages");
  }

  /** RFC 7239, section 7.4, on headers that intermediaries leave blank or garble. */
  @ParameterizedTest
  @ValueSource(strings = {"", " ", ",", "unknown", "_hidden", ":", "[", "1.2.3.4:x", "[::1]:99999"})
  void a_proxy_that_names_no_client_is_answered(String named) throws IOException {
    for (String header : List.of("X-Forwarded-For", "Forwarded", "X-Forwarded-Host")) {
      try (Socket socket = new Socket("127.0.0.1", RestAssured.port)) {
        socket.setSoTimeout(5000);
        socket
            .getOutputStream()
            .write(
                ("GET /v1/signs HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                        + header
                        + ": "
                        + named
                        + "\r\n\r\n")
                    .getBytes(UTF_8));
        String told = new String(socket.getInputStream().readAllBytes(), UTF_8);
        assertTrue(told.matches("(?s)HTTP/1.1 [24].*"), header + ": " + told);
      }
    }
  }

  @Test
  void answers_are_counted_and_reported() {
    fitting(from())
        .then()
        .statusCode(200)
        .header("RateLimit-Policy", equalTo("\"answers\";q=5;w=3600"))
        .header("RateLimit", startsWith("\"answers\";r=4;"));
  }

  static List<Map<String, String>> wrong() {
    return List.of(
        Map.of("Authorization", "Bearer " + NO_KEY),
        Map.of("Authorization", "bearer  " + NO_KEY),
        Map.of("Authorization", "Bearer x"),
        Map.of("Cookie", COOKIE + "=" + NO_KEY));
  }

  @ParameterizedTest
  @MethodSource("wrong")
  void a_wrong_key_counts_wherever_it_is_sent(Map<String, String> headers) {
    for (String path :
        List.of("/v1/signs", "/desk", "/desk/clinics", "/desk/size", "/rules", "/openapi.yaml")) {
      moveOn();
      assertEquals(
          WRONG_KEYS, answered(9, Stream.generate(() -> from().headers(headers).get(path))), path);
      from()
          .headers(headers)
          .get(path)
          .then()
          .header("Retry-After", matchesRegex("[1-9]\\d*"))
          .header("RateLimit", matchesRegex("\"wrong-keys\";r=0;t=[1-9]\\d*"));
      from().get(path).then().statusCode(lessThan(400));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/v1/wearer-links/" + NO_LINK,
        "/v1/wearer-links/x",
        "/v1//wearer-links/" + NO_LINK,
        "/v1/./wearer-links/" + NO_LINK,
        "/v1/wearer%2Dlinks/" + NO_LINK,
        "/v1/wearer-links;a=b/" + NO_LINK,
        "/v1;a=b/wearer-links/" + NO_LINK,
        "/v1/wearer-links/" + NO_LINK + ";a=b",
        "/v1/wearer-links/" + NO_LINK + "/",
        "/desk/wearer/" + NO_LINK,
        "/desk/wearer/" + NO_LINK + "/delete",
        "/desk;a=b/wearer/" + NO_LINK
      })
  void a_wrong_link_counts_however_its_address_is_written(String path) {
    long looks = answered(9, Stream.generate(() -> from().urlEncodingEnabled(false).get(path)));
    assertTrue(looks <= WRONG_KEYS, looks + " looks");
  }

  private void sendWrongKeys() {
    for (int i = 0; i < 3 * WRONG_KEYS; i++) {
      from().header("Authorization", "Bearer " + NO_KEY).get("/v1/clinics/aaaaaaaaaaaaaaaa");
      from().get("/v1/wearer-links/" + NO_LINK);
      signIn(from(), NO_KEY);
    }
  }

  @Test
  void wrong_keys_of_others_do_not_lock_out_a_valid_key() {
    sendWrongKeys();
    String key = clinic.organiser().text();
    from().header("Authorization", "Bearer " + NO_KEY).get("/v1/signs").then().statusCode(429);
    signIn(from(), NO_KEY).then().statusCode(429).contentType("text/html");

    from()
        .header("Authorization", "Bearer " + key)
        .get("/v1/clinics/" + clinic.id())
        .then()
        .statusCode(200);
    from().cookie(COOKIE, key).get("/desk/clinics/" + clinic.id()).then().statusCode(200);
    from().get("/v1/wearer-links/" + clinic.link().text()).then().statusCode(200);
    from().get("/desk/wearer/" + clinic.link().text()).then().statusCode(200);
    signIn(from(), key)
        .then()
        .statusCode(303)
        .header("Location", endsWith("/desk/clinics/" + clinic.id()))
        .header("Set-Cookie", startsWith(COOKIE + "=" + key));
  }

  @Test
  void a_valid_key_has_its_own_quota_of_answers() {
    for (int i = 0; i < 3 * ANSWERS; i++) {
      fitting(from());
    }
    fitting(from()).then().statusCode(429);
    String organiser = "Bearer " + clinic.organiser().text();
    String helper = "Bearer " + clinic.helper().text();
    assertEquals(
        ANSWERS,
        answered(9, Stream.generate(() -> fitting(from().header("Authorization", organiser)))));
    fitting(from().header("Authorization", helper)).then().statusCode(200);
    signIn(from(), clinic.helper().text()).then().statusCode(303);
  }

  @Test
  void a_revoked_key_in_a_cookie_is_dropped_and_does_not_prevent_signing_in() {
    from()
        .cookie(COOKIE, NO_KEY)
        .get("/desk")
        .then()
        .statusCode(200)
        .header("Set-Cookie", matchesRegex(COOKIE + "=;.*Max-Age=0;.*"));
    sendWrongKeys();
    signIn(from().cookie(COOKIE, NO_KEY), clinic.organiser().text()).then().statusCode(303);
  }

  @Test
  void keys_tried_at_the_form_for_signing_in_are_counted() {
    assertEquals(WRONG_KEYS, answered(9, Stream.generate(() -> signIn(from(), NO_KEY))));
    moveOn();
    assertEquals(WRONG_KEYS, answered(9, Stream.generate(() -> signIn(from(), "open sesame"))));
  }

  @Test
  void lines_of_a_request_are_counted_and_each_excess_line_is_reported() {
    String told =
        from()
            .contentType("application/x-ndjson")
            .body((ONE_SIGN + "\n").repeat(6).getBytes(UTF_8))
            .post("/v1/fittings")
            .then()
            .statusCode(200)
            .extract()
            .asString();
    List<String> lines = told.lines().toList();
    assertEquals(6, lines.size(), told);
    assertTrue(lines.get(3).contains("straps-slip-off"), lines.get(3));
    assertTrue(lines.get(4).startsWith("{\"type\":\"/problems/too-many\""), lines.get(4));
    assertTrue(lines.get(4).contains("\"line\":5"), lines.get(4));
  }
}
