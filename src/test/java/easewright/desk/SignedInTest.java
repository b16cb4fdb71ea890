package easewright.desk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Signing in with a key. Cookie attributes from RFC 6265, section 4.1.2, and draft 6265bis, section
 * 4.1.2.7 (SameSite); headers on a form's origin from the W3C's Fetch Metadata Request Headers and
 * the Fetch Standard.
 */
@QuarkusTest
class SignedInTest {
  @Inject ClinicStore store;

  private static RequestSpecification form() {
    return given()
        .redirects()
        .follow(false)
        .accept("text/html")
        .contentType("application/x-www-form-urlencoded;charset=UTF-8");
  }

  private Clinics.Opened clinic() {
    return store.clinics().open("Thursday sewing circle", "Odile", 90);
  }

  @Test
  void a_key_becomes_a_cookie_that_scripts_and_other_sites_do_not_get() {
    Clinics.Opened clinic = clinic();

    Response response = form().formParam("key", clinic.key().text()).post("/desk/sign-in");

    assertEquals(303, response.statusCode());
    assertTrue(response.header("Location").endsWith("/desk/clinics/" + clinic.clinic().id()));
    Cookie cookie = response.detailedCookie("easewright-key");
    assertTrue(cookie.isHttpOnly());
    assertEquals("Strict", cookie.getSameSite());
    assertEquals("/desk", cookie.getPath());
    assertFalse(cookie.hasExpiryDate());
    assertTrue(cookie.getMaxAge() < 0, "it ends with the session");
  }

  @Test
  void an_invalid_key_signs_nobody_in() {
    for (String key : new String[] {"", "open sesame", clinic().key().text() + "a"}) {
      form()
          .formParam("key", key)
          .post("/desk/sign-in")
          .then()
          .statusCode(422)
          .header("Set-Cookie", nullValue())
          .body(containsString("This key opens nothing."));
    }
  }

  @Test
  void a_wearers_link_leads_to_the_case_and_sets_no_cookie() {
    Caller organiser = store.keys().holder(clinic().key().text()).orElseThrow();
    String link =
        store.keys().issueLink(organiser, store.cases().open(organiser, "Wrenna").id()).text();

    form()
        .formParam("key", link)
        .post("/desk/sign-in")
        .then()
        .statusCode(303)
        .header("Location", endsWith("/desk/wearer/" + link))
        .header("Set-Cookie", nullValue());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"https://elsewhere.example", "//elsewhere.example", "/desk//x", "/v1/clinics"})
  void signing_in_never_redirects_away_from_the_desk(String to) {
    Clinics.Opened clinic = clinic();
    form()
        .formParam("key", clinic.key().text())
        .formParam("to", to)
        .post("/desk/sign-in")
        .then()
        .header("Location", endsWith("/desk/clinics/" + clinic.clinic().id()));
  }

  @Test
  void a_form_sent_from_another_site_is_refused_in_words() {
    String key = clinic().key().text();
    form()
        .header("Sec-Fetch-Site", "cross-site")
        .formParam("key", key)
        .post("/desk/sign-in")
        .then()
        .statusCode(403)
        .contentType("text/html")
        .header("Set-Cookie", nullValue());
    form()
        .header("Origin", "https://elsewhere.example")
        .formParam("key", key)
        .post("/desk/sign-in")
        .then()
        .statusCode(403);
  }

  @Test
  void a_form_without_the_token_of_its_key_does_not_sign_out() {
    String key = clinic().key().text();
    for (String token : new String[] {"", "0".repeat(64)}) {
      form()
          .cookie("easewright-key", key)
          .formParam("token", token)
          .post("/desk/sign-out")
          .then()
          .statusCode(403)
          .header("Set-Cookie", nullValue());
    }
  }

  @Test
  void callers_without_a_key_get_the_sign_in_page() {
    given()
        .accept("text/html")
        .get("/desk/clinics/" + clinic().clinic().id())
        .then()
        .statusCode(401)
        .contentType("text/html")
        .header("WWW-Authenticate", nullValue())
        .body(containsString("Your key"))
        .body(not(containsString("/problems/")));
  }
}
