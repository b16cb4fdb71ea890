package easewright.desk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Key;
import easewright.clinic.Outcome;
import easewright.clinic.Role;
import easewright.clinic.SampleClinic;
import easewright.photo.TestPictures;
import easewright.request.RequestJson;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Access to every page of a clinic: 401 without a valid key, 403 with the key of another role, 404
 * from another clinic (RFC 9110, section 15.5); and no form has any effect unless it was sent from
 * one of our pages (OWASP Cross-Site Request Forgery Prevention Cheat Sheet: a token tied to
 * whoever is signed in).
 */
@QuarkusTest
class ClinicPagesTest {
  private static final String COOKIE = "easewright-key";
  private static final String CASE = "/desk/clinics/{clinic}/cases/{case}";
  private static final String ORGANISE = "/desk/clinics/{clinic}/organise";
  private static final String GAPING =
      "Both armholes stand away at the front. The gape points at the apex, and the armhole gape"
          + " pinches out smooth.";
  private static final String ROUND =
      "{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"77 cm\"}, \"text\": \"The band rides up at"
          + " the back.\", \"signs\": [{\"sign\": \"band-pulls-off-the-body\"}]}";

  /** A page or a form of a clinic, and whether helpers may use it. */
  record Page(String method, String path, boolean forHelpers) {
    @Override
    public String toString() {
      return method + " " + path;
    }

    boolean changes() {
      return method.equals("POST");
    }
  }

  static List<Page> pages() {
    List<Page> pages = new ArrayList<>();
    for (String path :
        List.of(
            "",
            "/cases/{case}",
            "/cases/{case}/round",
            "/cases/{case}/export",
            "/insight",
            "/insight/table.csv",
            "/insight/drawing.svg",
            "/voice")) {
      pages.add(new Page("GET", "/desk/clinics/{clinic}" + path, true));
    }
    for (String path : List.of("", "/audit", "/export", "/delete")) {
      pages.add(new Page("GET", ORGANISE + path, false));
    }
    for (String action : List.of("settings", "revoke", "key", "feed", "delete")) {
      pages.add(new Page("POST", ORGANISE + "/" + action, false));
    }
    for (String action :
        List.of(
            "take",
            "put-back",
            "hand-over",
            "close",
            "reopen",
            "note",
            "reply",
            "withdraw",
            "outcome",
            "link",
            "share",
            "end-shares",
            "round")) {
      pages.add(new Page("POST", CASE + "/" + action, true));
    }
    pages.add(new Page("POST", CASE + "/photos", true));
    pages.add(new Page("GET", CASE + "/photos/{photo}", true));
    pages.add(new Page("GET", CASE + "/photos/{photo}/small", true));
    pages.add(new Page("POST", CASE + "/photos/{photo}/delete", true));
    pages.add(new Page("POST", "/desk/clinics/{clinic}/voice", true));
    pages.add(new Page("GET", CASE + "/delete", false));
    pages.add(new Page("POST", CASE + "/delete", false));
    pages.add(new Page("POST", "/desk/clinics/{clinic}/cases", true));
    pages.add(new Page("GET", "/desk/clinics/{clinic}/same/{group}", true));
    pages.add(new Page("POST", "/desk/clinics/{clinic}/same/{group}", true));
    pages.add(new Page("POST", "/desk/clinics/{clinic}/same/{group}/undo", true));
    return pages;
  }

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private Caller organiser;
  private Key helper;
  private String id;
  private String photo;
  private Clinics.Opened opened;

  @BeforeEach
  void stock() {
    opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    organiser = store.keys().holder(opened.key().text()).orElseThrow();
    helper = store.keys().issue(organiser, Role.HELPER, "Perrin");
    id = caseOf("Wrenna");
    photo = store.photos().add(organiser, id, 1, "The back", TestPictures.clean(40, 30)).id();
  }

  private String caseOf(String nickname) {
    String one = store.cases().open(organiser, nickname).id();
    store
        .rounds()
        .add(
            organiser,
            one,
            fittings.read(RequestJson.parse(ROUND.getBytes(StandardCharsets.UTF_8))));
    return one;
  }

  private static String token(String key) {
    return new HmacUtils(HmacAlgorithms.HMAC_SHA_256, "Bearer " + key)
        .hmacHex("a form of the desk");
  }

  /** The form with the fields of all actions. */
  private RequestSpecification asking(String key) {
    RequestSpecification request =
        given()
            .redirects()
            .follow(false)
            .accept("text/html,application/json;q=0.9,*/*;q=0.8")
            .contentType("application/x-www-form-urlencoded;charset=UTF-8");
    return key == null ? request : request.cookie(COOKIE, key);
  }

  private RequestSpecification filled(String key) {
    return asking(key)
        .formParam("/name", "Other")
        .formParam("/role", "helper")
        .formParam("/retentionDays", "1")
        .formParam("key", helper.id())
        .formParam("/text", "Words.")
        .formParam("text", "The straps slip off.")
        .formParam("/nickname", "Ivolde")
        .formParam("number", "1")
        .formParam("/outcome", "solved")
        .formParam("case", id + ":2")
        .formParam("keep", "yes")
        .formParam("sure", "yes");
  }

  private Response call(Page page, RequestSpecification request) {
    if (page.changes()) {
      request.formParam(
          "/version",
          page.path().startsWith(ORGANISE) || page.path().endsWith("/voice")
              ? opened.clinic().version()
              : store.cases().story(organiser, id).current().version());
    }
    if (page.path().endsWith("/photos")) {
      request
          .contentType("multipart/form-data")
          .formParam("round", "1")
          .formParam("alt", "The left armhole")
          .multiPart("photo", "photo.jpg", TestPictures.jpeg(40, 30), "image/jpeg");
    }
    return request.request(
        page.method(),
        page.path()
            .replace("{clinic}", organiser.clinic())
            .replace("{case}", id)
            .replace("{photo}", photo)
            .replace("{group}", "band-too-long.band-pulls-off-the-body"));
  }

  private String contents() {
    return new ObjectMapper()
        .findAndRegisterModules()
        .valueToTree(store.clinics().export(organiser))
        .toString();
  }

  @Test
  void every_page_of_the_clinics_has_its_row() throws ClassNotFoundException {
    Set<String> served = new TreeSet<>();
    for (var found : new ClassFileImporter().importPackages("easewright.desk")) {
      if (!found.isAnnotatedWith(Path.class)) {
        continue;
      }
      Class<?> resource = Class.forName(found.getName());
      String root = resource.getAnnotation(Path.class).value();
      for (Method method : resource.getDeclaredMethods()) {
        for (var annotation : method.getAnnotations()) {
          HttpMethod http = annotation.annotationType().getAnnotation(HttpMethod.class);
          if (http != null && root.startsWith("/desk/clinics/{clinic}")) {
            Path below = method.getAnnotation(Path.class);
            served.add(http.value() + " " + root + (below == null ? "" : below.value()));
          }
        }
      }
    }
    Set<String> told = new TreeSet<>(pages().stream().map(Page::toString).toList());
    // One method handles many actions, each with its own row.
    served.remove("POST " + CASE + "/{deed}");
    served.remove("POST " + ORGANISE + "/{deed}");
    assertTrue(told.containsAll(served), () -> "without a row: " + without(served, told));
  }

  private static Set<String> without(Set<String> all, Set<String> those) {
    Set<String> rest = new TreeSet<>(all);
    rest.removeAll(those);
    return rest;
  }

  @ParameterizedTest
  @MethodSource("pages")
  void a_page_is_allowed_only_for_the_roles_in_its_row(Page page) {
    Clinics.Opened other = store.clinics().open("Another circle", "Isaura", 90);
    String wearer = store.keys().issueLink(organiser, id).text();
    String before = contents();

    refused(page, null, 401, before);
    refused(page, "ewo-" + opened.key().id() + "-" + "a".repeat(40), 401, before);
    refused(page, other.key().text(), 404, before);
    refused(page, wearer, 403, before);
    if (!page.forHelpers()) {
      refused(page, helper.text(), 403, before);
    }
  }

  /** The next test only removes the token, so that the token alone makes the difference. */
  @ParameterizedTest
  @MethodSource("pages")
  void a_page_is_shown_and_our_own_form_accepted(Page page) {
    caseOf("Tamsel"); // with the same question, so that there is a group
    if (page.path().endsWith("/share")) {
      int version = store.cases().story(organiser, id).current().version();
      store.rounds().reply(organiser, id, 1, version, "Take it in.");
    }
    String key = page.forHelpers() ? helper.text() : opened.key().text();

    Response response =
        call(
            page,
            page.changes()
                ? filled(key).formParam("token", token(key)).header("Sec-Fetch-Site", "same-origin")
                : asking(key));

    assertTrue(
        List.of(200, 303).contains(response.statusCode()),
        () -> response.statusCode() + " " + response.asString());
  }

  private void refused(Page page, String key, int status, String before) {
    RequestSpecification request = page.changes() ? filled(key) : asking(key);
    if (page.changes() && key != null) {
      request.formParam("token", token(key));
    }
    Response response = call(page, request);
    assertEquals(status, response.statusCode(), response::asString);
    assertTrue(response.contentType().startsWith("text/html"), response.contentType());
    assertFalse(response.asString().contains("Wrenna"), response::asString);
    assertEquals(before, contents(), "something was changed");
  }

  @ParameterizedTest
  @MethodSource("pages")
  void a_page_is_kept_nowhere_and_a_form_without_its_token_or_from_elsewhere_does_nothing(
      Page page) {
    String key = opened.key().text();
    if (!page.changes()) {
      Response shown = call(page, asking(key));
      assertEquals("no-store", shown.header("Cache-Control"));
      assertEquals("same-origin", shown.header("Referrer-Policy"));
      assertTrue(
          shown
              .header("Content-Security-Policy")
              .contains(page.path().contains("{photo}") ? "sandbox" : "form-action 'self'"));
      return;
    }
    String before = contents();
    for (RequestSpecification forged :
        List.of(
            filled(key),
            filled(key).formParam("token", token(helper.text())),
            filled(key).formParam("token", token(key)).header("Sec-Fetch-Site", "same-site"),
            filled(key).formParam("token", token(key)).header("Origin", "https://other.example"))) {
      Response response = call(page, forged);
      assertEquals(403, response.statusCode(), response::asString);
      assertEquals(before, contents(), "something was changed");
    }
  }

  @Test
  void a_wearer_sees_no_notes_of_helpers_and_no_advice_before_the_reply() {
    store.cases().note(organiser, id, "Ask about the elastic.");
    String link = store.keys().issueLink(organiser, id).text();

    given()
        .accept("text/html")
        .get("/desk/wearer/" + link)
        .then()
        .statusCode(200)
        .body(containsString("The band rides up at the back."))
        .body(not(containsString("Ask about the elastic.")))
        .body(not(containsString("What the rule book said")));
  }

  @Test
  void a_wearer_in_danger_is_warned_before_any_reply() {
    String link = store.keys().issueLink(organiser, id).text();

    asking(null)
        .formParam("/text", "The band digs in and my fingers go numb.")
        .post("/desk/wearer/" + link + "/round")
        .then()
        .statusCode(303);

    given()
        .accept("text/html")
        .get("/desk/wearer/" + link)
        .then()
        .body(containsString("Please stop and read this first."));
  }

  @Test
  void an_invalid_or_revoked_link_is_not_found() {
    String link = store.keys().issueLink(organiser, id).text();
    store.keys().issueLink(organiser, id);
    for (String none : List.of(link, helper.text(), "none")) {
      for (String path : List.of("", "/delete")) {
        given().accept("text/html").get("/desk/wearer/" + none + path).then().statusCode(404);
      }
      for (String action : List.of("round", "outcome", "note", "delete")) {
        filled(null).post("/desk/wearer/" + none + "/" + action).then().statusCode(404);
      }
    }
    assertEquals(1, store.cases().story(organiser, id).rounds().size());
  }

  @Test
  void the_form_for_the_next_toile_has_the_body_as_reported_and_the_advice_as_tried() {
    String key = opened.key().text();
    store.rounds().outcome(organiser, id, 1, Outcome.WORSE, null);
    String tried =
        store
            .cases()
            .story(organiser, id)
            .rounds()
            .get(0)
            .fitted()
            .advice()
            .at("/adjustments/0/id")
            .asText();

    String page = call(new Page("GET", CASE + "/round", true), asking(key)).asString();

    assertFalse(tried.isEmpty());
    assertTrue(page.contains("&quot;adjustment&quot;:&quot;" + tried + "&quot;"), page);
    assertTrue(page.contains("&quot;outcome&quot;:&quot;worse&quot;"), page);
    assertTrue(page.contains("&quot;bust&quot;:&quot;94"), page);
    assertFalse(page.contains("&quot;signs&quot;"), page);
  }

  @Test
  void a_sign_of_many_causes_is_not_reported_as_no_fault() {
    String one = store.cases().open(organiser, "Ivolde").id();
    String gapes = "{\"signs\": [{\"sign\": \"neckline-gapes\"}]}";
    store
        .rounds()
        .add(
            organiser,
            one,
            fittings.read(RequestJson.parse(gapes.getBytes(StandardCharsets.UTF_8))));

    asking(helper.text())
        .get("/desk/clinics/" + opened.clinic().id() + "/cases/" + one)
        .then()
        .statusCode(200)
        .body(containsString("Not clear"))
        .body(not(containsString("Nothing that was told points to a fault")));
  }

  @Test
  void a_question_at_fault_opens_no_case() {
    String key = opened.key().text();
    asking(key)
        .formParam("token", token(key))
        .formParam("/nickname", "Ivolde")
        .formParam("/body/bust", "ninety")
        .post("/desk/clinics/" + organiser.clinic() + "/cases")
        .then()
        .statusCode(400)
        .body(containsString("Please check this:"));
    asking(key)
        .formParam("token", token(key))
        .formParam("text", "The straps slip off.")
        .post("/desk/clinics/" + organiser.clinic() + "/cases")
        .then()
        .statusCode(400)
        .body(containsString("id=\"nickname\""));
    assertEquals(1, store.cases().queue(organiser).size());
  }

  /** A fault planted in two cups: nine of ten there, none of ten in the others. */
  @Test
  void a_common_fault_is_described_in_words_and_drawn_by_cup() {
    List<String> large = List.of("75D", "80D", "85D", "90D", "70E", "75E", "80E", "85E", "90E");
    large.forEach(size -> caseCut(size, GAPING));
    caseCut("70D", "The straps slip off.");
    List.of("75A", "80A", "85A", "70B", "75B", "80B", "75C", "80C", "85C", "90C")
        .forEach(size -> caseCut(size, "The band rides up at the back."));
    String home = "/desk/clinics/" + organiser.clinic() + "/insight";

    String page = asking(helper.text()).get(home).then().statusCode(200).extract().asString();

    String told =
        "<strong>9 of 10</strong> cases in the two largest cups: front armhole too long. In its"
            + " other cups it is 0 of 10.";
    assertTrue(page.contains(told), page);
    assertTrue(page.contains("A, 0 of 3; B, 0 of 3; C, 0 of 4; D, 4 of 5; E, 5 of 5"), page);
    assertEquals(2, page.split("<rect class=\"here\"", -1).length - 1, "cups marked");
    assertTrue(page.contains("/insight?size=75D\">75D"), page);

    String one = asking(helper.text()).get(home + "?pattern=&size=75D").asString();
    assertTrue(one.contains("cut in 75D"), one);
    assertTrue(one.contains("1 case is counted"), one);
    assertTrue(one.contains("too few to tell"), "a share of one case");
    assertTrue(one.contains(told), "the fault does not depend on what is looked at");
    assertTrue(one.contains("<option value=\"80C\">"), "other sizes can still be asked for");
    assertTrue(one.contains("/insight/table.csv?size=75D\""), one);
  }

  private void caseCut(String size, String post) {
    String round =
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"sizeCut\": \"%s\", \"text\": \"%s\"}"
            .formatted(size, post);
    String one = store.cases().open(organiser, "In " + size).id();
    store
        .rounds()
        .add(
            organiser,
            one,
            fittings.read(RequestJson.parse(round.getBytes(StandardCharsets.UTF_8))));
  }

  @Test
  void what_is_asked_for_by_address_is_never_taken_for_more_than_text() {
    asking(helper.text())
        .queryParam("size", "\"><b>&{x}%41")
        .get("/desk/clinics/" + organiser.clinic() + "/insight")
        .then()
        .statusCode(200)
        .body(containsString("No case has all that."))
        .body(not(containsString("<b>")));
  }

  /** RFC 3986, section 2.1: characters not allowed in a URI are percent-encoded. */
  @Test
  void a_deletion_that_is_not_confirmed_leads_back_whatever_stood_in_the_address() {
    String key = opened.key().text();
    for (String path : List.of("/desk/wearer/{x}", CASE.replace("{case}", "{x}"))) {
      asking(key)
          .formParam("token", token(key))
          .post(path.replace("{clinic}", organiser.clinic()) + "/delete", "<b> {\r\n\u0000½")
          .then()
          .statusCode(303)
          .header("Location", endsWith("/%3Cb%3E%20%7B%0D%0A%00%C2%BD/delete"));
    }
  }

  @Test
  void the_last_organisers_key_stays_and_the_page_says_so() {
    String key = opened.key().text();
    asking(key)
        .formParam("token", token(key))
        .formParam("key", opened.key().id())
        .post("/desk/clinics/" + organiser.clinic() + "/organise/revoke")
        .then()
        .statusCode(409)
        .body(containsString("The last organiser’s key stays."));
  }

  @Test
  void only_a_sample_has_a_button_that_removes_it_and_only_for_its_organiser() {
    Clinics.Opened sample = SampleClinic.open(store, fittings::read, Instant.now());
    Caller sampleOrganiser = store.keys().holder(sample.key().text()).orElseThrow();
    Key helping = store.keys().issue(sampleOrganiser, Role.HELPER, "Perrin");
    String home = "/desk/clinics/" + sampleOrganiser.clinic();
    String button = "Remove the sample";
    assertTrue(asking(sample.key().text()).get(home).asString().contains(button));
    assertFalse(asking(helping.text()).get(home).asString().contains(button));
    assertFalse(
        asking(opened.key().text())
            .get("/desk/clinics/" + organiser.clinic())
            .asString()
            .contains(button));
  }
}
