package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.answering.RuleBookService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.saying.Replies;
import easewright.saying.ReplyLength;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A reported danger or circumstance applies until somebody reports that it is gone or dealt with.
 * Why: a new breast change needs a doctor whatever happens to the garment (NHS, "Breast lumps";
 * NICE NG12, section 1.4), and a bra that presses makes inflammation worse (Mitchell et al. 2022,
 * Breastfeed Med 17:360).
 */
@QuarkusTest
class StandingDangerTest {
  private static final String LOOSE = "The band rides up at the back and pulls off the body.";

  @Inject RuleBookService rules;
  @Inject ClinicStore store;
  @Inject ObjectMapper json;

  private Caller organiser;
  private String key;
  private String cases;
  private String id;
  private String link;

  @BeforeEach
  void open() {
    var opened = store.clinics().open("Thursday sewing circle", "Odile", 90);
    key = opened.key().text();
    organiser = store.keys().holder(key).orElseThrow();
    cases = "/v1/clinics/" + organiser.clinic() + "/cases/";
    id = store.cases().open(organiser, "Wrenna").id();
    link = store.keys().issueLink(organiser, id).text();
  }

  private JsonNode read(String text) {
    try {
      return json.readTree(text.replace('\'', '"'));
    } catch (java.io.IOException e) {
      throw new AssertionError(e);
    }
  }

  private Answer answer(String request) {
    return rules.edition().answer(read(request));
  }

  private JsonPath round(String request) {
    return given()
        .contentType("application/json")
        .header("Authorization", "Bearer " + key)
        .body(request.replace('\'', '"'))
        .post(cases + id + "/rounds")
        .then()
        .statusCode(201)
        .extract()
        .jsonPath();
  }

  private void wearerWrites(String text, String... gone) {
    var form =
        given()
            .redirects()
            .follow(false)
            .contentType("application/x-www-form-urlencoded;charset=UTF-8")
            .formParam("/text", text);
    if (gone.length > 0) {
      form.formParam("gone", List.of(gone));
    }
    form.post("/desk/wearer/" + link + "/round").then().statusCode(303);
  }

  private JsonNode newest() {
    var rounds = store.cases().story(organiser, id).rounds();
    return rounds.get(rounds.size() - 1).fitted().advice();
  }

  private boolean stops(JsonNode advice) {
    return advice.at("/cautions/0/urgency").asText().equals("stop");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "new-lump-dimpling-or-discharge | I found a new lump in my breast.",
        "hot-red-or-painful-area | One breast is hot and red and hard.",
        "fever | The band digs in and I have a fever.",
        "numb-or-tingling-arm-or-hand | The band digs in and my fingers go numb.",
        "breathless-or-dizzy | I get dizzy and short of breath in it."
      })
  void a_danger_of_the_first_round_comes_first_in_the_next_until_it_is_gone(
      String sign, String told) {
    wearerWrites(told);
    String first = newest().at("/cautions/0/id").asText();
    assertTrue(stops(newest()), told);

    wearerWrites(LOOSE);

    assertTrue(stops(newest()), newest().toString());
    assertEquals(first, newest().at("/cautions/0/id").asText());
    assertEquals(0, newest().path("adjustments").size());
    assertTrue(newest().path("notNow").asText().contains("has it been seen to"));
    given().get("/desk/wearer/" + link).then().body(containsString("name=\"gone\""));

    wearerWrites(LOOSE, sign);

    assertFalse(stops(newest()), newest().toString());
    assertTrue(newest().path("adjustments").size() > 0);
    wearerWrites(LOOSE);
    assertFalse(stops(newest()), "it stays gone");
  }

  @Test
  void a_round_through_the_service_forgets_no_danger_and_no_circumstance() {
    round(
        "{'signs': [{'sign': 'fever'}, {'sign': 'band-digs-in'}],"
            + " 'circumstances': {'nursing': true, 'growing': false}}");

    JsonPath next = round("{'signs': [{'sign': 'band-rides-up-at-the-back'}]}");

    assertEquals("stop", next.getString("advice.cautions[0].urgency"));
    assertEquals(true, next.getBoolean("request.circumstances.nursing"));
    assertFalse(next.getString("request").contains("band-digs-in"), "that was another toile");

    JsonPath gone =
        round(
            "{'signs': [{'sign': 'band-rides-up-at-the-back'}, {'sign': 'fever', 'seen':"
                + " 'absent'}]}");
    assertEquals("care", gone.getString("advice.cautions[0].urgency"));
    JsonPath weaned =
        round(
            "{'signs': [{'sign': 'band-rides-up-at-the-back'}], 'circumstances': {'nursing':"
                + " false}}");
    assertFalse(weaned.getString("advice.cautions").contains("stopsTightening:true"));
  }

  @Test
  void the_form_of_the_next_round_shows_the_danger_and_unticking_it_is_not_enough() {
    round("{'signs': [{'sign': 'fever'}]}");
    String page =
        given()
            .accept("text/html")
            .cookie("easewright-key", key)
            .get("/desk" + cases.substring(3) + id + "/round")
            .asString();
    assertTrue(page.contains("value=\"fever\" checked"), "ticked");
    assertTrue(page.contains("looked, not seen” for it"), "how it ends");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'text': 'The band rides up and I have a fever with a sore breast.', 'signs': [{'sign':"
            + " 'fever', 'seen': 'absent'}]}",
        "{'text': 'The band rides up at the back, and my fingers go numb in it.', 'signs':"
            + " [{'sign': 'numb-or-tingling-arm-or-hand', 'seen': 'absent'}]}"
      })
  void a_field_that_denies_a_danger_does_not_override_a_text_that_reports_it(String request) {
    Answer answer = answer(request);

    assertTrue(answer.isDanger());
    assertEquals("/signs", answer.read().at("/conflicts/0/pointer").asText());
    assertTrue(answer.read().at("/conflicts/0/field").asText().endsWith(", absent"));
    assertTrue(rules.edition().answer(answer.soFar()).isDanger());
  }

  @ParameterizedTest
  @CsvSource({
    "nursing, I am nursing.",
    "pregnant, I am pregnant.",
    "radiotherapy, I had radiotherapy last year."
  })
  void a_field_that_denies_a_circumstance_does_not_override_a_text_that_reports_it(
      String field, String told) {
    Answer answer =
        answer("{'text': '" + LOOSE + " " + told + "', 'circumstances': {'" + field + "': false}}");

    assertTrue(answer.soFar().path("circumstances").path(field).asBoolean());
    assertTrue(answer.cautions().stream().anyMatch(CautionNote::stopsTightening));
    assertEquals("/circumstances/" + field, answer.read().at("/conflicts/0/pointer").asText());
    assertEquals("false", answer.read().at("/conflicts/0/field").asText());
  }

  @Test
  void fewer_months_since_an_operation_count_where_text_and_field_differ() {
    Answer answer =
        answer(
            "{'text': '"
                + LOOSE
                + " I had a breast operation 2 months ago.',"
                + " 'circumstances': {'monthsSinceOperation': 40}}");

    assertEquals(2, answer.soFar().at("/circumstances/monthsSinceOperation").asInt());
  }

  @Test
  void words_that_only_a_person_can_judge_are_not_lost_when_the_request_goes_on() {
    JsonNode soFar =
        read(
            "{'readYourself': ['my side went all funny'], 'signs': [{'sign':"
                + " 'band-rides-up-at-the-back'}, {'sign': 'band-pulls-off-the-body'}]}");

    for (int turn = 0; turn < 3; turn++) {
      Answer answer = rules.edition().answer(soFar);
      assertEquals(List.of("my side went all funny"), answer.readYourself());
      assertTrue(answer.adjustments().stream().noneMatch(AdjustmentNote::tightens));
      assertTrue(Replies.text(answer, ReplyLength.LONG, "").contains("my side went all funny"));
      assertFalse(Replies.text(answer, ReplyLength.SHORT, "").contains("my side went all funny"));
      soFar = answer.soFar();
    }
    ((com.fasterxml.jackson.databind.node.ObjectNode) soFar).remove("readYourself");
    assertTrue(
        rules.edition().answer(soFar).adjustments().stream().anyMatch(AdjustmentNote::tightens));
  }

  @Test
  void what_was_read_in_a_text_for_a_person_to_judge_goes_into_the_request_to_go_on_from() {
    Answer answer = answer("{'text': '" + LOOSE + " Something is not right with my chest.'}");
    List<String> unjudged = answer.readYourself();
    assertFalse(unjudged.isEmpty());
    assertEquals(unjudged, rules.edition().answer(answer.soFar()).readYourself());
  }
}
