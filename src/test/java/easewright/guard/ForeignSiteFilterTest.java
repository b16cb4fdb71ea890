package easewright.guard;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.fuzz.Endpoints;
import easewright.fuzz.Endpoints.Endpoint;
import easewright.fuzz.KeptClinic;
import easewright.fuzz.RawRequest;
import easewright.fuzz.Seeds;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Cross-site requests change nothing, not even what needs no key (Fetch Standard, "CORS-safelisted
 * method" and "request-header": a POST without a form, or of plain text, is sent without preflight;
 * Fetch Metadata Request Headers; RFC 6454, section 7.3, on "null").
 */
@Tag("long")
@QuarkusTest
class ForeignSiteFilterTest {
  /** Paths that only compute an answer, whoever calls. */
  private static final Set<String> ANSWERING =
      Set.of(
          "/v1/fittings",
          "/v1/fittings/checks",
          "/v1/intakes",
          "/v1/cut-plans",
          "/v1/size-checks",
          "/v1/cloth-checks",
          "/v1/pattern-sheets/checks",
          "/desk",
          "/desk/answer",
          "/desk/size",
          "/desk/cloth",
          "/desk/cut");

  private static final List<Map<String, String>> ELSEWHERE =
      List.of(
          Map.of("Origin", "http://evil.example"),
          Map.of("Origin", "null"),
          Map.of("Origin", "http://localhost"), // the port is another
          Map.of("Sec-Fetch-Site", "cross-site"),
          Map.of("Sec-Fetch-Site", "same-site"),
          Map.of("Origin", "http://evil.example", "Sec-Fetch-Site", "cross-site"));

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private KeptClinic clinic;

  static Set<Endpoint> changing() {
    return Endpoints.all().stream()
        .filter(one -> !one.method().equals("GET") && !ANSWERING.contains(one.path()))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  static Set<Endpoint> answering() {
    return Endpoints.all().stream()
        .filter(one -> !one.method().equals("GET") && ANSWERING.contains(one.path()))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @BeforeEach
  void stock() {
    clinic = KeptClinic.in(store, fittings);
  }

  private RawRequest.Answer send(Endpoint endpoint, Map<String, String> said) {
    RawRequest good = new Seeds(clinic).request(endpoint);
    Map<String, String> headers = new LinkedHashMap<>(good.headers());
    headers.put("Host", "localhost:" + RestAssured.port);
    headers.putAll(said);
    return new RawRequest(good.method(), good.target(), headers, good.body())
        .send(RestAssured.port);
  }

  @ParameterizedTest
  @MethodSource("changing")
  void what_another_site_sends_changes_nothing_though_all_else_is_right(Endpoint endpoint) {
    String before = clinic.contents();
    for (Map<String, String> elsewhere : ELSEWHERE) {
      RawRequest.Answer answer = send(endpoint, elsewhere);
      assertEquals(403, answer.status(), () -> endpoint + " " + elsewhere + answer.body());
      assertEquals("", answer.header("set-cookie"));
      assertEquals(before, clinic.contents());
    }
  }

  @ParameterizedTest
  @MethodSource("answering")
  void what_only_answers_is_answered(Endpoint endpoint) {
    assertEquals(200, send(endpoint, ELSEWHERE.get(0)).status());
  }

  @Test
  void requests_from_our_own_pages_are_accepted() {
    String own = "http://localhost:" + RestAssured.port;
    for (Map<String, String> said :
        List.of(
            Map.<String, String>of(),
            Map.of("Origin", own),
            Map.of("Sec-Fetch-Site", "same-origin", "Origin", "null"))) {
      RawRequest.Answer answer = send(new Endpoint("POST", "/v1/clinics"), said);
      assertEquals(201, answer.status(), answer::body);
    }
  }

  @Test
  void a_page_of_another_site_cannot_open_the_sample() {
    given()
        .header("Origin", "http://evil.example")
        .header("Sec-Fetch-Site", "cross-site")
        .post("/v1/clinics/samples")
        .then()
        .statusCode(403)
        .contentType("application/problem+json")
        .body("type", equalTo("/problems/refused"));
    given()
        .header("Origin", "http://evil.example")
        .noContentType()
        .body("{\"name\": \"Circle\", \"organiser\": \"Odile\"}".getBytes(UTF_8))
        .post("/v1/clinics")
        .then()
        .statusCode(403);
  }

  @Test
  void a_form_in_a_sandboxed_frame_signs_nobody_in() {
    given()
        .redirects()
        .follow(false)
        .header("Origin", "null")
        .formParam("key", clinic.organiser().text())
        .post("/desk/sign-in")
        .then()
        .statusCode(403)
        .contentType("text/html");
  }

  /**
   * So that a browser sends our origin with our own forms, and never "null" for one of our pages.
   */
  @Test
  void pages_with_forms_send_a_referrer_to_our_own_site_only() {
    for (String page : List.of("/desk", "/desk/sign-in", "/desk/clinics/new")) {
      assertEquals("same-origin", given().get(page).header("Referrer-Policy"), page);
    }
    assertEquals(
        "no-referrer", given().accept("text/html").get("/rules").header("Referrer-Policy"));
    assertTrue(changing().size() > 20, changing()::toString);
  }
}
