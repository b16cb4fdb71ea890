package easewright.desk;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import easewright.clinic.Key;
import easewright.fuzz.Endpoints;
import easewright.fuzz.Endpoints.Endpoint;
import easewright.fuzz.KeptClinic;
import easewright.fuzz.Seeds;
import easewright.photo.TestPictures;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
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
 * No form changes anything when another site sends it (OWASP Cross-Site Request Forgery Prevention
 * Cheat Sheet: a token bound to the signed-in user; also Fetch Metadata and the origin). The forms
 * are found in the code.
 */
@Tag("long")
@QuarkusTest
class ForgedFormsTest {
  /** What protects a form from forgery. */
  enum Guard {
    /** Its origin, and the token derived from the key in the cookie. */
    TOKEN,
    /** Its origin, and the link in its URL, which only the wearer has. */
    LINK,
    /** Its origin: nobody is signed in yet. */
    ORIGIN,
    /** Nothing: it is answered but changes nothing. */
    NONE
  }

  private static final Set<String> ANSWERING =
      Set.of("/desk", "/desk/answer", "/desk/size", "/desk/cloth", "/desk/cut");
  private static final Set<String> BEFORE_SIGNING_IN =
      Set.of("/desk/sign-in", "/desk/clinics/new", "/desk/clinics/new/sample");

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private KeptClinic clinic;
  private KeptClinic other;

  @BeforeEach
  void stock() {
    clinic = KeptClinic.in(store, fittings);
    other = KeptClinic.in(store, fittings);
  }

  /** Every form not listed needs a token, including new ones. */
  private static Guard guard(Endpoint form) {
    if (ANSWERING.contains(form.path())) {
      return Guard.NONE;
    }
    if (BEFORE_SIGNING_IN.contains(form.path())) {
      return Guard.ORIGIN;
    }
    return form.path().startsWith("/desk/wearer/") ? Guard.LINK : Guard.TOKEN;
  }

  private static Set<Endpoint> guardedBy(Set<Guard> guards) {
    return Endpoints.forms().stream()
        .filter(form -> guards.contains(guard(form)))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  static Set<Endpoint> all() {
    return Endpoints.forms();
  }

  static Set<Endpoint> changing() {
    return guardedBy(Set.of(Guard.TOKEN, Guard.LINK, Guard.ORIGIN));
  }

  static Set<Endpoint> withToken() {
    return guardedBy(Set.of(Guard.TOKEN));
  }

  static Set<Endpoint> byLink() {
    return guardedBy(Set.of(Guard.LINK));
  }

  static Set<Endpoint> answering() {
    return guardedBy(Set.of(Guard.NONE));
  }

  private Response post(
      Endpoint form, Map<String, List<String>> fields, Map<String, String> saidOfIt) {
    return post(form, new Seeds(clinic).path(form), fields, saidOfIt);
  }

  private Response post(
      Endpoint form, String path, Map<String, List<String>> fields, Map<String, String> saidOfIt) {
    RequestSpecification request =
        given()
            .redirects()
            .follow(false)
            .cookie("easewright-key", clinic.organiser().text())
            .headers(saidOfIt)
            .accept("text/html");
    if (form.takesPhoto()) {
      fields.forEach((name, values) -> values.forEach(value -> request.multiPart(name, value)));
      request.multiPart("photo", "a.jpg", TestPictures.jpeg(40, 30), "image/jpeg");
    } else {
      request.contentType("application/x-www-form-urlencoded;charset=UTF-8").formParams(fields);
    }
    return request.post(path);
  }

  private Map<String, List<String>> fields(Endpoint form, String token) {
    Map<String, List<String>> fields = new LinkedHashMap<>(new Seeds(clinic).form(form));
    fields.put(SignedIn.TOKEN, token == null ? List.of() : List.of(token));
    return fields;
  }

  private String token() {
    return KeptClinic.token(clinic.organiser());
  }

  private void refused(Response response, String before) {
    assertEquals(403, response.statusCode(), response::asString);
    assertNull(response.header("Set-Cookie"));
    assertEquals(before, clinic.contents(), "something was changed");
  }

  @Test
  void forms_of_every_kind_were_found() {
    assertTrue(withToken().size() >= 16, withToken()::toString);
    assertTrue(byLink().size() >= 4, byLink()::toString);
    assertEquals(
        BEFORE_SIGNING_IN.size() + ANSWERING.size(),
        all().size() - withToken().size() - byLink().size());
  }

  @ParameterizedTest
  @MethodSource("all")
  void our_own_form_is_accepted(Endpoint form) {
    for (Map<String, String> said :
        List.of(
            Map.of("Sec-Fetch-Site", "same-origin"),
            Map.of("Sec-Fetch-Site", "same-origin", "Origin", "null"),
            Map.of("Origin", RestAssured.baseURI + ":" + RestAssured.port))) {
      stock();
      Response response = post(form, fields(form, token()), said);
      assertTrue(
          List.of(200, 201, 303).contains(response.statusCode()),
          () -> response.statusCode() + " " + response.asString());
    }
  }

  @ParameterizedTest
  @MethodSource("changing")
  void a_form_sent_from_elsewhere_does_nothing_though_all_else_is_right(Endpoint form) {
    String before = clinic.contents();
    for (Map<String, String> elsewhere :
        List.of(
            Map.of("Sec-Fetch-Site", "cross-site"),
            Map.of("Sec-Fetch-Site", "same-site"),
            Map.of("Sec-Fetch-Site", "none"),
            Map.of("Sec-Fetch-Site", "cross-site", "Origin", "null"),
            Map.of("Origin", "null"), // a frame without an origin of its own
            Map.of("Origin", "https://elsewhere.example"),
            Map.of("Origin", RestAssured.baseURI), // the port is another
            Map.of("Origin", "http://localhost.elsewhere.example"))) {
      refused(post(form, fields(form, token()), elsewhere), before);
    }
  }

  @ParameterizedTest
  @MethodSource("withToken")
  void a_form_without_its_token_or_with_anothers_does_nothing(Endpoint form) {
    String before = clinic.contents();
    for (String token :
        new String[] {
          null,
          "",
          "0".repeat(64),
          token().substring(1),
          token().toUpperCase(Locale.ROOT),
          KeptClinic.token(clinic.helper()),
          KeptClinic.token(other.organiser()),
          KeptClinic.token(clinic.link())
        }) {
      refused(post(form, fields(form, token), Map.of()), before);
    }
  }

  /**
   * The link acts as the token: it gives access to its own case, and a key in a cookie does not
   * replace it.
   */
  @ParameterizedTest
  @MethodSource("byLink")
  void a_wearers_form_needs_the_link_of_its_case(Endpoint form) {
    String before = clinic.contents();
    String path = new Seeds(clinic).path(form);
    Key link = clinic.link();
    for (String none :
        List.of(
            other.link().text(),
            clinic.organiser().text(),
            clinic.helper().text(),
            link.text().substring(0, link.text().length() - 1),
            "ewl-" + link.id() + "-" + "a".repeat(40),
            clinic.caseId())) {
      Response response =
          post(form, path.replace(link.text(), none), fields(form, token()), Map.of());
      if (!none.equals(other.link().text())) {
        assertEquals(404, response.statusCode(), response::asString);
      }
      assertEquals(before, clinic.contents(), "something was changed");
    }
  }

  @ParameterizedTest
  @MethodSource("answering")
  void a_form_that_is_only_answered_changes_nothing_and_is_shown_only_to_its_sender(Endpoint form) {
    String before = clinic.contents();
    Response response = post(form, fields(form, null), Map.of("Sec-Fetch-Site", "cross-site"));
    assertEquals(200, response.statusCode(), response::asString);
    assertNull(response.header("Set-Cookie"));
    assertNull(response.header("Access-Control-Allow-Origin"));
    assertEquals(before, clinic.contents(), "something was changed");
  }
}
