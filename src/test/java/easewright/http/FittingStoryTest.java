package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One wearer from the first try-on to the last, over HTTP. Facts of the trade: common practice. */
@QuarkusTest
class FittingStoryTest {
  private static final String FIRST =
      """
      {"body": {"bust": "36 3/4 in", "underbust": "30 1/4 in"},
       "pattern": {"sheet": "quillmere-top"}, "sizeCut": "80C",
       "signs": [
         {"sign": "band-rides-up-at-the-back", "seen": "present", "degree": "clear"},
         {"sign": "straps-dig-in", "seen": "present"}%s]%s}
      """;

  private static JsonPath answer(String signs, String more) {
    return given()
        .contentType("application/json")
        .body(FIRST.formatted(signs, more))
        .when()
        .post("/v1/fittings?detail=full")
        .then()
        .statusCode(200)
        .header("Cache-Control", "no-store")
        .extract()
        .jsonPath();
  }

  @Test
  void advice_changes_when_shortening_the_straps_made_it_worse_and_the_band_is_then_taken_in() {
    JsonPath unsure = answer("", "");
    float bandAtFirst = probability(unsure, "band-too-long");
    List<String> asked = unsure.getList("questions.sign");
    assertFalse(asked.isEmpty(), "a climbing band alone leaves something to ask");

    JsonPath tried =
        answer(
            ",{\"sign\": \"band-pulls-off-the-body\", \"seen\": \"present\", \"amount\": \"2 in\"}",
            ",\"earlier\": [{\"adjustment\": \"shorten-the-straps\", \"amount\": \"1 in\","
                + " \"outcome\": \"worse\"}]");
    assertEquals("band-too-long", tried.getString("causes[0].id"));
    assertTrue(probability(tried, "band-too-long") > bandAtFirst);
    assertEquals("put-the-last-change-back", tried.getString("adjustments[0].id"));
    assertEquals("take-in-the-band", tried.getString("adjustments[1].id"));
    assertTrue(tried.getDouble("adjustments[1].amount.mm") > 3);
    assertTrue(tried.getString("adjustments[1].amount.text").endsWith(" in"));
    assertEquals("Underband", tried.getString("adjustments[1].places[0].piece"));

    JsonPath fixed =
        given()
            .contentType("application/json")
            .body(
                """
                {"body": {"bust": "36 3/4 in", "underbust": "30 1/4 in"},
                 "pattern": {"sheet": "quillmere-top"}, "sizeCut": "80C",
                 "garment": {"underband": "27 1/2 in"},
                 "signs": [
                   {"sign": "band-rides-up-at-the-back", "seen": "absent"},
                   {"sign": "straps-dig-in", "seen": "absent"},
                   {"sign": "band-pulls-off-the-body", "seen": "absent"}],
                 "earlier": [{"adjustment": "take-in-the-band", "amount": "1 in",
                              "outcome": "better"}]}
                """)
            .post("/v1/fittings?detail=full")
            .jsonPath();
    assertTrue(
        fixed.getDouble("nothingWrong") > unsure.getDouble("nothingWrong"),
        "once the signs are gone, less is thought to be wrong");
    assertFalse(
        fixed.getList("adjustments.id").contains("take-in-the-band") && fixed.getBoolean("clear"),
        "what is mended is not mended again");
  }

  private static float probability(JsonPath answer, String cause) {
    Float found = answer.get("causes.find { it.id == '" + cause + "' }?.probability");
    return found == null ? 0 : found;
  }

  @Test
  void a_red_flag_comes_first_and_nothing_is_made_tighter() {
    given()
        .contentType("application/json")
        .body(
            FIRST.formatted(
                ",{\"sign\": \"band-pulls-off-the-body\", \"seen\": \"present\"},"
                    + "{\"sign\": \"numb-or-tingling-arm-or-hand\", \"seen\": \"present\"}",
                ""))
        .when()
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .body("cautions[0].urgency", equalTo("stop"))
        .body("cautions[0].stopsTightening", equalTo(true))
        .body("adjustments", hasSize(0));
  }

  @Test
  void measurements_alone_get_a_size_with_its_odds_and_no_diagnosis() {
    given()
        .contentType("application/json")
        .body("{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"77 cm\"}}")
        .when()
        .post("/v1/fittings?detail=full")
        .then()
        .statusCode(200)
        .body("size.recommended.probability", greaterThan(0.2f))
        .body("size.recommended.probability", lessThan(0.9f))
        .body("size.systems.find { it.system == 'EN 13402-3' }.label", equalTo("75 C"))
        .body("clear", equalTo(false))
        .body("missing.pointer", hasItem("/signs"));
  }

  @Test
  void markdown_can_be_posted_as_it_is() {
    given()
        .contentType("application/json")
        .accept("text/markdown")
        .body(
            FIRST.formatted(",{\"sign\": \"band-pulls-off-the-body\", \"seen\": \"present\"}", ""))
        .when()
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .contentType("text/markdown")
        .body(containsString("**Most likely:** band too long"))
        .body(containsString("**Then check:**"));
  }

  /** Somebody waits for a reply; a program is told what is wrong with its request. */
  @ParameterizedTest
  @ValueSource(strings = {"text/plain", "text/markdown", "text/html"})
  void a_post_about_something_else_gets_a_reply_as_text_and_a_problem_as_data(String form) {
    String thread = "{\"nickname\": \"Fern\", \"text\": \"What thread suits leather handbags?\"}";
    String german = "{\"text\": \"Meine Träger rutschen und das Unterbrustband ist zu weit.\"}";
    said(form, thread)
        .statusCode(200)
        .contentType(startsWith(form))
        .body(containsString("Fern"))
        .body(containsString("tell me what you see and where"));
    said(form, "{\"text\": \"Thank you all, I danced in it till midnight!\"}")
        .statusCode(200)
        .body(not(containsString("tell me what you see and where")));
    said(
            form,
            "{\"text\": \"What you told me in January worked, I shared the slack out. Thanks!\"}")
        .statusCode(200)
        .body(not(containsString("To help I need a little more")));
    said(form, german).statusCode(200).body(containsString("this looks like German"));
    said("application/json", thread).statusCode(422).body("faults[0].pointer", equalTo("/text"));
    said(form, "{\"text\": 7}").statusCode(400).contentType("application/problem+json");
  }

  @ParameterizedTest
  @ValueSource(strings = {"text/plain", "text/markdown", "text/html"})
  void a_post_that_tells_nothing_of_its_bra_is_asked_where_and_what(String form) {
    String vague =
        "{\"nickname\": \"Fern\", \"text\": \"I made two bras and both are not comfortable. My sister"
            + " has the same pattern and for her it is good. What must I change?\"}";
    said(form, vague)
        .statusCode(200)
        .body(containsString("Fern"))
        .body(containsString("To help I need a little more"));
    said("application/json", vague)
        .statusCode(422)
        .body("faults[0].problem", containsString("nothing to go on"));
  }

  private static ValidatableResponse said(String form, String request) {
    return given()
        .contentType("application/json")
        .accept(form + ", application/problem+json")
        .body(request.getBytes(StandardCharsets.UTF_8))
        .post("/v1/fittings")
        .then();
  }
}
