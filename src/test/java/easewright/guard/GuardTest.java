package easewright.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesRegex;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.URI;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Rejections before anything is read: 503 (RFC 9110, 15.6.4) and 429 (RFC 6585, section 4) with
 * Retry-After (RFC 9110, 10.2.3), and the fields RateLimit-Policy and RateLimit as
 * draft-ietf-httpapi-ratelimit-headers-10 writes them.
 */
@Tag("long")
@QuarkusTest
@TestProfile(GuardTest.Small.class)
class GuardTest {
  private static final String ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";
  private static final String NO_KEY =
      "ewo-aaaaaaaaaaaaaaaa-aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";

  /** A service with two slots and short timeouts. */
  public static class Small implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.limit.at-once", "2",
          "easewright.limit.at-once-of-long", "1",
          "easewright.limit.arrival", "6S",
          // Another test in this JVM may have put connections under watch.
          "easewright.limit.arrival-in-need", "60S",
          "easewright.limit.openings", "2 in 1H",
          "easewright.limit.wrong-keys", "3 in 1H",
          "easewright.limit.answers", "100000 in 1M",
          "easewright.clinic.store", "target/guarded-store");
    }
  }

  @TestHTTPResource(value = "/health", management = true)
  URI health;

  @Inject RequestSlots slots;

  /** A request begun before an earlier test's slot is free would itself be rejected. */
  @BeforeEach
  void wait_for_every_slot() throws InterruptedException {
    for (int polls = 0; polls < 500 && !slots.left().equals(List.of(2, 1)); polls++) {
      Thread.sleep(20);
    }
    assertEquals(List.of(2, 1), slots.left());
  }

  private static ValidatableResponse fitting() {
    return given().contentType(ContentType.JSON).body(ONE_SIGN).post("/v1/fittings").then();
  }

  /** A request whose body never arrives. */
  private static Socket begun(String form) throws IOException {
    return begun(form, 100);
  }

  private static Socket begun(String form, int length) throws IOException {
    Socket socket = new Socket("127.0.0.1", RestAssured.port);
    socket.setSoTimeout(30_000);
    socket
        .getOutputStream()
        .write(
            ("POST /v1/fittings HTTP/1.1\r\nHost: localhost\r\nContent-Type: "
                    + form
                    + "\r\nContent-Length: "
                    + length
                    + "\r\n\r\n{")
                .getBytes(UTF_8));
    return socket;
  }

  /**
   * A request whose body never arrives and that has taken a slot; begun anew where one of the test
   * before was still in its way.
   *
   * @param left how many slots are then left
   */
  private Socket holding(int left) throws IOException, InterruptedException {
    for (int tries = 0; tries < 5; tries++) {
      Socket socket = begun("application/json");
      for (int polls = 0; polls < 50; polls++) {
        if (slots.left().get(0) == left) {
          return socket;
        }
        Thread.sleep(20);
      }
      socket.close();
    }
    throw new AssertionError("No slot is taken: " + slots.left());
  }

  /** Until it is so five times in a row: a slot may be taken or freed a moment after a response. */
  private static void awaitStatus(int status) throws InterruptedException {
    int inARow = 0;
    for (int tries = 0; tries < 1000 && inARow < 5; tries++) {
      inARow = fitting().extract().statusCode() == status ? inARow + 1 : 0;
      Thread.sleep(20);
    }
    assertEquals(5, inARow, "not " + status + " for long");
  }

  @Test
  void requests_beyond_the_slots_are_rejected_while_health_is_still_reported() throws Exception {
    try (Socket one = holding(1);
        Socket other = holding(0)) {
      awaitStatus(503);
      fitting()
          .contentType("application/problem+json")
          .header("Retry-After", "1")
          .header("Cache-Control", "no-store")
          .header("X-Content-Type-Options", "nosniff")
          .body("type", equalTo("/problems/busy"))
          .body("status", equalTo(503));
      given().get("/desk").then().statusCode(503);
      given().get("/rules").then().statusCode(503);
      given().post("/mcp").then().statusCode(503);
      given()
          .body(ONE_SIGN.getBytes(UTF_8))
          .contentType("application/x-ndjson")
          .post("/v1/fittings")
          .then()
          .statusCode(503);
      given().get(health).then().statusCode(200).body("status", equalTo("UP"));
      given().get("/q/health").then().statusCode(503);
      given().get("/mcp").then().statusCode(503);
    }
    awaitStatus(200);
  }

  @Test
  void a_client_that_trickles_its_request_loses_the_slot() throws Exception {
    try (Socket one = holding(1);
        Socket other = holding(0)) {
      awaitStatus(503);
      assertEquals(-1, one.getInputStream().read());
      assertEquals(-1, other.getInputStream().read());
      awaitStatus(200);
    }
  }

  @Test
  void bulk_requests_do_not_take_every_slot() throws Exception {
    try (Socket one = begun("application/x-ndjson")) {
      assertTrue(one.isConnected());
      for (int tries = 0; tries < 100 && lines() != 503; tries++) {
        Thread.sleep(20);
      }
      assertEquals(503, lines());
      fitting().statusCode(200);
    }
  }

  private static int lines() {
    return given()
        .contentType("application/x-ndjson")
        .body(ONE_SIGN.getBytes(UTF_8))
        .post("/v1/fittings")
        .statusCode();
  }

  @Test
  void every_slot_is_freed_however_a_request_ends() throws Exception {
    for (int i = 0; i < 20; i++) {
      awaitStatus(200); // on a busy machine a disconnection is noticed only after a while
      given().contentType(ContentType.JSON).body("{").post("/v1/fittings").then().statusCode(400);
      given().get("/nothing").then().statusCode(404);
      // Only its head, since the service may close the connection during such a body.
      try (Socket huge = begun("application/json", 2_000_000)) {
        String status = new BufferedReader(new InputStreamReader(huge.getInputStream())).readLine();
        assertTrue(status.startsWith("HTTP/1.1 413 "), status);
      }
      given()
          .contentType("application/x-ndjson")
          .body(ONE_SIGN.getBytes(UTF_8))
          .post("/v1/fittings");
      given().get("/desk").then().statusCode(200);
      begun("application/json").close();
      begun("application/x-ndjson").close();
    }
    awaitStatus(200);
    try (Socket one = begun("application/json")) {
      fitting().statusCode(200);
    }
  }

  private static ValidatableResponse opening() {
    return given()
        .contentType(ContentType.JSON)
        .body("{\"name\": \"Circle\", \"organiser\": \"Odile\"}")
        .post("/v1/clinics")
        .then();
  }

  /** In one test, since counts persist between tests. */
  @Test
  void only_clients_that_open_clinics_or_try_keys_too_often_have_to_wait() {
    opening()
        .statusCode(201)
        .header("RateLimit-Policy", "\"openings\";q=2;w=3600")
        .header("RateLimit", matchesRegex("\"openings\";r=1;t=\\d+"));
    String key = opening().statusCode(201).extract().path("key.key");
    opening()
        .statusCode(429)
        .contentType("application/problem+json")
        .header("Retry-After", matchesRegex("[1-9]\\d*"))
        .header("RateLimit", matchesRegex("\"openings\";r=0;t=[1-9]\\d*"))
        .body("type", equalTo("/problems/too-many"))
        .body("detail", not(containsString("Circle")));
    given().post("/v1/clinics/samples").then().statusCode(429);
    given().post("/desk/clinics/new/sample").then().statusCode(429);
    fitting().statusCode(200).header("RateLimit-Policy", "\"answers\";q=100000;w=60");

    String clinic = "/v1/clinics/aaaaaaaaaaaaaaaa";
    given().header("Authorization", "Bearer " + key).get(clinic).then().statusCode(404);
    given().header("Authorization", "Bearer " + NO_KEY).get(clinic).then().statusCode(401);
    given().formParam("key", NO_KEY).post("/desk/sign-in").then().statusCode(422);
    given().get("/v1/wearer-links/" + NO_KEY).then().statusCode(404);
    for (String tried : List.of("/v1/wearer-links/" + NO_KEY, "/desk/wearer/" + NO_KEY)) {
      given()
          .get(tried)
          .then()
          .statusCode(429)
          .header("RateLimit", matchesRegex("\"wrong-keys\";r=0;t=[1-9]\\d*"));
    }
    given().formParam("key", NO_KEY).post("/desk/sign-in").then().statusCode(429);
    given().header("Authorization", "Bearer " + NO_KEY).get(clinic).then().statusCode(429);
    fitting().statusCode(200).header("Retry-After", nullValue());
  }
}
