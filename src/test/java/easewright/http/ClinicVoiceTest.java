package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.hasItems;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * Replies in a clinic's own voice. That a stale change is refused with 409 is RFC 9110, section
 * 15.5.10; faults are problems of RFC 9457. What a voice holds is common practice of help boards.
 */
@QuarkusTest
class ClinicVoiceTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String POST =
      "The Thursday top rides up at the back. The band rides up and pulls 5 cm off my body.";

  @Inject ClinicStore store;
  @Inject RoundReader fittings;

  private static ObjectNode example() throws IOException {
    return (ObjectNode)
        JSON.readTree(Files.readString(Path.of("openapi/examples/clinic-voice.json")));
  }

  private static Response put(StockedClinic clinic, JsonNode voice) {
    return given()
        .header("Authorization", "Bearer " + clinic.helper().text())
        .contentType(ContentType.JSON)
        .body(voice.toString())
        .put("/v1/clinics/" + clinic.id() + "/voice");
  }

  private JsonNode answered(StockedClinic clinic, ObjectNode fitting) throws IOException {
    Response added =
        given()
            .header("Authorization", "Bearer " + clinic.helper().text())
            .contentType(ContentType.JSON)
            .body(fitting.toString())
            .post("/v1/clinics/" + clinic.id() + "/cases/" + clinic.open().id() + "/rounds");
    assertEquals(201, added.statusCode(), added::asString);
    return JSON.readTree(added.asByteArray()).path("advice");
  }

  private static ObjectNode post() {
    return JSON.createObjectNode().put("text", POST);
  }

  @Test
  void a_case_is_answered_in_the_voice_of_its_clinic() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    StockedClinic other = StockedClinic.in(store, fittings);
    ObjectNode voice = example().put("tone", "plain");
    put(clinic, voice).then().statusCode(200);

    JsonNode answer = answered(clinic, post());
    JsonNode reply = answer.path("reply");
    String first = reply.path(0).asText();
    assertTrue(first.startsWith("Hello") && first.endsWith("Good to hear from you."), first);
    assertFalse(first.contains("thank"), first);
    assertEquals(
        voice.path("closing").asText(), reply.path(reply.size() - 1).asText(), reply::toString);
    assertEquals("quillmere-top", answer.at("/understood/sheet").asText(), answer::toString);

    assertFalse(answered(other, post()).path("reply").toString().contains("Thursday circle"));
  }

  @Test
  void what_a_fitting_says_itself_counts_before_the_clinic() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    put(clinic, example().put("tone", "plain")).then().statusCode(200);
    String reply =
        answered(clinic, post().put("voice", "warm").put("closing", "Yours, Perrin"))
            .path("reply")
            .toString();
    assertTrue(reply.contains("Yours, Perrin") && !reply.contains("Thursday circle"), reply);
    assertTrue(reply.matches("(?s).*(thank|well done|good test).*"), reply);
  }

  @Test
  void beside_a_danger_only_the_closing_line_is_said() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    put(clinic, example()).then().statusCode(200);
    JsonNode reply =
        answered(clinic, JSON.createObjectNode().put("text", "I found a lump in my breast."))
            .path("reply");
    assertEquals("Hello,", reply.path(0).asText(), reply::toString);
    assertFalse(reply.toString().contains("Good to hear"), reply::toString);
  }

  @Test
  void it_is_kept_whole_and_a_change_based_on_an_old_version_is_refused() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    JsonNode now = JSON.readTree(put(clinic, example()).asByteArray());
    assertEquals(example().put("version", 2), now);
    put(clinic, example()).then().statusCode(409);
    String kept = clinic.contents(store);
    assertTrue(kept.contains("the Thursday top") && kept.contains("Photos help"), kept);
  }

  /** Whoever is signed in answers for her clinic; a stranger at the same desk does not. */
  @Test
  void the_open_desk_speaks_in_the_voice_of_the_clinic_that_is_signed_in() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    put(clinic, example()).then().statusCode(200);
    String mine =
        given()
            .cookie("easewright-key", clinic.helper().text())
            .formParam("text", POST)
            .post("/desk/answer")
            .asString();
    assertTrue(mine.contains("Happy sewing from the Thursday circle"), mine);
    String stranger = given().formParam("text", POST).post("/desk/answer").asString();
    assertTrue(stranger.contains("id=\"post\""), stranger);
    assertFalse(stranger.contains("Thursday circle"), stranger);
  }

  @Test
  void what_was_typed_stays_on_the_page_beside_its_faults() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    String key = clinic.helper().text();
    String address = "/desk/clinics/" + clinic.id() + "/voice";
    Response page = given().cookie("easewright-key", key).get(address);
    String token = page.htmlPath().getString("**.find { it.@name == 'token' }.@value");
    Response refused =
        given()
            .cookie("easewright-key", key)
            .header("Sec-Fetch-Site", "same-origin")
            .formParam("token", token)
            .formParam("/version", "1")
            .formParam("/tone", "plain")
            .formParam("/opening", "Lovely to hear from you.")
            .formParam("/closing", "x".repeat(81))
            .formParam("/snippets/0/name", "Photos")
            .formParam("/patterns/quillmere-top", "the Monday top")
            .post(address);
    assertEquals(400, refused.statusCode(), refused::asString);
    String shown = refused.asString();
    for (String typed :
        new String[] {
          "Lovely to hear from you.",
          "x".repeat(81),
          "value=\"Photos\"",
          "the Monday top",
          "value=\"plain\" checked"
        }) {
      assertTrue(shown.contains(typed), () -> typed + " is not in " + shown);
    }
    String afterwards = given().cookie("easewright-key", key).get(address).asString();
    assertFalse(afterwards.contains("Lovely to hear"), "a faulty voice was kept");
  }

  @Test
  void every_fault_is_named_at_once() throws IOException {
    StockedClinic clinic = StockedClinic.in(store, fittings);
    ObjectNode voice = example().put("tone", "loud").put("closing", "x".repeat(81));
    voice.putArray("snippets").addObject().put("name", "Photos");
    voice.putArray("patterns").addObject().put("sheet", "nowhere").put("name", "mine");
    put(clinic, voice)
        .then()
        .statusCode(400)
        .body(
            "faults.pointer",
            hasItems("/tone", "/closing", "/snippets/0/text", "/patterns/0/sheet"));
  }
}
