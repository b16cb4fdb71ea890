package easewright.desk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.request.CircumstancesReader;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The desk's pages as served. Header values from W3C Content Security Policy Level 3, section 6.
 */
@QuarkusTest
class DeskPagesTest {
  /** Blocked by the policy, and so not allowed in pages: inline styles, scripts and handlers. */
  private static final Pattern INLINE =
      Pattern.compile(
          "<style|<script>| style=\"| on[a-z]+=\"|javascript:|https?://(?!www\\.w3\\.org)");

  private static RequestSpecification form() {
    return given()
        .accept("text/html")
        .contentType("application/x-www-form-urlencoded;charset=UTF-8");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/desk",
        "/desk/size",
        "/desk/cloth",
        "/desk/cut",
        "/desk/cut?sheet=quillmere-top"
      })
  void a_page_of_the_desk_runs_only_its_own_script_and_sets_no_cookie(String path) {
    Response page = given().accept("text/html").get(path);

    assertEquals(200, page.statusCode());
    List<String> policy = List.of(page.header("Content-Security-Policy").split("; "));
    assertTrue(policy.contains("default-src 'none'"), policy::toString);
    assertTrue(policy.contains("script-src 'self'"), policy::toString);
    assertTrue(policy.contains("frame-ancestors 'none'"), policy::toString);
    assertEquals("no-store", page.header("Cache-Control"));
    assertFalse(page.headers().hasHeaderWithName("Set-Cookie"));
    assertFalse(INLINE.matcher(page.asString()).find(), page.asString());
  }

  @Test
  void a_hostile_post_is_shown_as_text_in_the_field_and_in_the_reading() {
    String hostile = "</textarea><script>x()</script> the band rides up at the back";

    String page = form().formParam("text", hostile).post("/desk").asString();

    assertFalse(page.contains("<script>x"), page);
    assertTrue(page.contains("&lt;/textarea&gt;&lt;script&gt;x()"), page);
    assertTrue(page.contains("<mark>rides up at the back<sup>1</sup></mark>"), page);
  }

  @Test
  void the_hidden_field_with_earlier_reports_is_checked_like_any_request() {
    form()
        .formParam("soFar", "{\"body\": \"<b>94\", \"nonsense\": 1}")
        .post("/desk")
        .then()
        .statusCode(400)
        .body(containsString("Please check this:"))
        .body(not(containsString("<b>94")));
  }

  @Test
  void a_number_that_cannot_be_parsed_is_reported_at_its_field() {
    form()
        .formParam("/body/bust", "ninety")
        .formParam("/body/underbust", "77")
        .post("/desk/size")
        .then()
        .statusCode(400)
        .body(containsString("href=\"#body-bust\""))
        .body(containsString("id=\"body-bust\" name=\"/body/bust\" value=\"ninety\""));
  }

  @Test
  void the_answer_alone_is_the_same_as_in_the_whole_page() {
    String text = "The straps dig in and the band rides up at the back.";

    String alone = form().formParam("text", text).post("/desk/answer").asString();

    assertTrue(alone.contains("id=\"question\""), alone);
    assertTrue(
        form().formParam("text", text).post("/desk").asString().contains(alone.strip()), alone);
  }

  @Test
  void an_empty_form_is_not_a_fault() {
    form()
        .formParam("text", "")
        .formParam("units", "metric")
        .post("/desk")
        .then()
        .statusCode(200)
        .body(containsString("The answer comes here."));
  }

  /**
   * Every circumstance in the contract that matters for a wearer's safety can be entered on every
   * form.
   */
  @Test
  void every_circumstance_has_a_box_on_each_form() {
    for (String page : List.of("/desk", "/desk/size", "/desk/cloth")) {
      String html = given().accept("text/html").get(page).asString();
      for (String flag : CircumstancesReader.flags()) {
        assertTrue(html.contains("name=\"/circumstances/" + flag + "\""), page + " " + flag);
      }
    }
  }

  @Test
  void a_ticked_box_brings_its_caution() {
    String page =
        form()
            .formParam("seen", "band-pulls-off-the-body")
            .formParam("/circumstances/lymphoedemaOrNodesRemoved", "yes")
            .post("/desk")
            .asString();

    assertTrue(page.contains("lymphoedema therapist"), page);
    assertTrue(
        page.contains("name=\"/circumstances/lymphoedemaOrNodesRemoved\" value=\"yes\" checked"));
  }
}
