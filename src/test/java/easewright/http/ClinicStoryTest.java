package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertFalse;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A case from the pasted post to its closing, over HTTP. */
@QuarkusTest
class ClinicStoryTest {

  private static ValidatableResponse send(String method, String key, String path, String body) {
    var request = given();
    if (key != null) {
      request.header("Authorization", "Bearer " + key);
    }
    if (body != null) {
      request.contentType(ContentType.JSON).body(body);
    }
    return request.request(method, path).then();
  }

  @Test
  void a_case_goes_from_the_post_to_the_closed_case_and_is_deleted() {
    ValidatableResponse opened =
        send(
            "POST",
            null,
            "/v1/clinics",
            "{\"name\": \"Thursday sewing circle\", \"organiser\": \"Odile\"}");
    opened.statusCode(201).body("clinic.retentionDays", equalTo(180));
    String organiser = opened.extract().path("key.key");
    String clinic = "/v1/clinics/" + opened.extract().path("clinic.id");
    String one = helper(organiser, clinic, "Perrin");
    String other = helper(organiser, clinic, "Isaura");
    String cases = clinic + "/cases";
    String id =
        send("POST", one, cases, "{\"nickname\": \"Wrenna\"}").statusCode(201).extract().path("id");
    String link = send("POST", one, cases + "/" + id + "/wearer-link", null).extract().path("key");
    String own = "/v1/wearer-links/" + link;

    send("POST", null, own + "/rounds", StockedClinic.ROUND)
        .statusCode(201)
        .body("number", equalTo(1))
        .body("post", equalTo("The band rides up at the back."))
        .body("request.signs.sign", hasItem("band-rides-up-at-the-back"))
        .body("request", not(hasKey("text")))
        .body("$", not(hasKey("advice")))
        .body("by.role", equalTo("wearer"));

    send("GET", one, cases, null).body("[0].id", equalTo(id)).body("[0].version", equalTo(2));
    send("POST", one, cases + "/" + id + "/taking", "{\"version\": 2}")
        .statusCode(200)
        .body("holder.name", equalTo("Perrin"));
    for (String seen : new String[] {"2", "3"}) {
      send("POST", other, cases + "/" + id + "/taking", "{\"version\": " + seen + "}")
          .statusCode(409)
          .body("type", equalTo("/problems/overtaken"))
          .body("detail", containsString("Perrin"));
    }
    send(
            "PUT",
            one,
            cases + "/" + id + "/rounds/1/reply",
            "{\"version\": 3, \"text\": \"Pin the band in and raise both arms.\"}")
        .statusCode(200)
        .body("case.waitingSince", nullValue())
        .body("rounds[0].reply.by", equalTo("Perrin"));
    send("GET", null, own, null)
        .statusCode(200)
        .header("Referrer-Policy", "no-referrer")
        .body("rounds[0].reply.text", containsString("raise both arms"));
    send("PUT", null, own + "/rounds/1/outcome", "{\"outcome\": \"solved\"}")
        .statusCode(200)
        .body("rounds[0].outcome", equalTo("solved"));
    send("POST", one, cases + "/" + id + "/closing", "{\"version\": 5}")
        .statusCode(200)
        .body("state", equalTo("closed"));

    send("GET", organiser, clinic + "/export", null)
        .body("cases[0].rounds[0].request.body.bust", equalTo("94 cm"));
    send("GET", organiser, clinic + "/audit", null)
        .body("deed", hasItem("outcome-told"))
        .body("toString()", not(containsString("94 cm")));
    send("DELETE", null, own, null).statusCode(204);
    send("GET", null, own, null).statusCode(404);
    send("GET", organiser, cases, null).body("$", hasSize(0));
    send("DELETE", organiser, clinic, null).statusCode(204);
    send("GET", organiser, clinic, null).statusCode(401);
  }

  private static String helper(String organiser, String clinic, String name) {
    return send(
            "POST",
            organiser,
            clinic + "/keys",
            "{\"role\": \"helper\", \"name\": \"" + name + "\"}")
        .statusCode(201)
        .extract()
        .path("key");
  }

  /** Like the wearer's page: advice waits for a helper, a warning does not. */
  @Test
  void a_wearer_is_warned_at_once_and_advised_once_a_helper_has_replied() {
    ValidatableResponse opened =
        send("POST", null, "/v1/clinics", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
    String organiser = opened.extract().path("key.key");
    String cases = "/v1/clinics/" + opened.extract().path("clinic.id") + "/cases";
    String id = send("POST", organiser, cases, "{\"nickname\": \"Wrenna\"}").extract().path("id");
    String own =
        "/v1/wearer-links/"
            + send("POST", organiser, cases + "/" + id + "/wearer-link", null)
                .extract()
                .path("key");
    String round =
        "{\"text\": \"My left arm goes numb in it, and the straps slip off.\","
            + " \"pattern\": {\"sheet\": \"quillmere-top\"}, \"sizeCut\": \"80C\"}";

    send("POST", null, own + "/rounds", round)
        .statusCode(201)
        .body("cautions[0].stopsTightening", equalTo(true))
        .body("$", not(hasKey("advice")));
    for (String told :
        new String[] {
          send("GET", null, own, null).extract().asString(),
          send("PUT", null, own + "/rounds/1/outcome", "{\"outcome\": \"same\"}")
              .extract()
              .asString()
        }) {
      for (String advice : new String[] {"adjustments", "causes", "\"cause\"", "heldBack"}) {
        assertFalse(told.contains(advice), told);
      }
    }
    send("GET", null, own, null)
        .body("rounds[0].cautions[0].stopsTightening", equalTo(true))
        .body("rounds[0].post", containsString("slip off"));
    send("GET", organiser, cases + "/" + id, null).body("rounds[0].advice", hasKey("adjustments"));

    int version = send("GET", organiser, cases + "/" + id, null).extract().path("case.version");
    send(
            "PUT",
            organiser,
            cases + "/" + id + "/rounds/1/reply",
            "{\"version\": " + version + ", \"text\": \"Please stop wearing it.\"}")
        .statusCode(200);
    send("POST", null, own + "/rounds", round).statusCode(201);
    send("GET", null, own, null)
        .body("rounds[0].advice", hasKey("causes"))
        .body("rounds[1]", not(hasKey("advice")))
        .body("rounds[1].cautions[0].stopsTightening", equalTo(true));
  }

  @Test
  void a_refused_fitting_leaves_no_round_and_every_fault_of_a_form_is_named() {
    ValidatableResponse opened =
        send("POST", null, "/v1/clinics", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
    String organiser = opened.extract().path("key.key");
    String cases = "/v1/clinics/" + opened.extract().path("clinic.id") + "/cases";
    String id = send("POST", organiser, cases, "{\"nickname\": \"Wrenna\"}").extract().path("id");
    send("POST", organiser, cases + "/" + id + "/rounds", "{\"body\": {\"bust\": 94}}")
        .statusCode(400);
    send("POST", organiser, cases + "/" + id + "/rounds", "{}").statusCode(422);
    send("GET", organiser, cases + "/" + id, null)
        .body("rounds", hasSize(0))
        .body("case.version", equalTo(1));
    send("PUT", organiser, cases + "/" + id + "/rounds/1/reply", "{\"text\": 1, \"x\": 2}")
        .statusCode(400)
        .body("faults.pointer", hasItem("/text"))
        .body("faults.pointer", hasItem("/x"))
        .body("faults.pointer", hasItem("/version"));
    send("POST", null, "/v1/clinics", "{\"name\": \" \", \"retentionDays\": 0}")
        .statusCode(400)
        .body("faults.pointer", hasItem("/name"))
        .body("faults.pointer", hasItem("/organiser"))
        .body("faults.pointer", hasItem("/retentionDays"));
    send("PUT", organiser, cases + "/" + id + "/rounds/9/outcome", "{\"outcome\": \"same\"}")
        .statusCode(404);
  }

  @Test
  void one_reply_goes_to_all_cases_with_the_same_question_except_changed_ones_and_red_flags() {
    ValidatableResponse opened =
        send("POST", null, "/v1/clinics", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
    String organiser = opened.extract().path("key.key");
    String clinic = "/v1/clinics/" + opened.extract().path("clinic.id");
    String slack =
        "{\"signs\": [{\"sign\": \"band-rides-up-at-the-back\"},"
            + " {\"sign\": \"band-pulls-off-the-body\"}, {\"sign\": \"straps-dig-in\"}]}";
    String one = asking(organiser, clinic, "Wrenna", slack);
    String other = asking(organiser, clinic, "Marrowby", slack);
    String held = asking(organiser, clinic, "Thistlewick", slack);
    String lump = asking(organiser, clinic, "Pellow", "{\"text\": \"I found a lump.\"}");
    send("GET", organiser, clinic + "/queue", null)
        .statusCode(200)
        .body("entries.case.nickname", contains("Pellow", "Wrenna", "Marrowby", "Thistlewick"))
        .body("entries.reason", contains("red-flag", "waiting", "waiting", "waiting"))
        .body("groups.cases", contains(contains(one, other, held)));

    send("GET", organiser, clinic + "/insight", null)
        .statusCode(200)
        .body("cases", equalTo(3))
        .body("redFlags", equalTo(1))
        .body("causes[0].cases.part", equalTo(3))
        .body("causes[0].cases", not(hasKey("share")));
    given()
        .header("Authorization", "Bearer " + organiser)
        .accept("text/csv")
        .get(clinic + "/insight")
        .then()
        .contentType("text/csv")
        .body(containsString("all,,sign,band-rides-up-at-the-back,"));
    given()
        .header("Authorization", "Bearer " + organiser)
        .accept("image/svg+xml")
        .get(clinic + "/insight")
        .then()
        .contentType("image/svg+xml")
        .body(containsString("3 of 3"));
    send("POST", organiser, clinic + "/cases/" + held + "/notes", "{\"text\": \"Wait.\"}");
    String all =
        "{\"cases\": [%s], \"text\": \"Pin the band in.\"}"
            .formatted(
                Stream.of(one, other, held, lump, "nobody")
                    .map(id -> "{\"case\": \"" + id + "\", \"version\": 2}")
                    .collect(Collectors.joining(", ")));
    send("POST", organiser, clinic + "/replies", all)
        .statusCode(200)
        .body("answered", contains(true, true, false, false, false))
        .body("refusal", contains(null, null, "overtaken", "red-flag", "not-found"))
        .body("[2].version", equalTo(3));
    send("GET", organiser, clinic + "/queue", null)
        .body("entries.reason", contains("red-flag", "waiting", "answered", "answered"))
        .body("groups", hasSize(0));
    send("GET", organiser, clinic + "/cases/" + lump, null).body("rounds[0].reply", nullValue());
    send("POST", organiser, clinic + "/replies", "{\"cases\": [{\"case\": 1}], \"x\": 1}")
        .statusCode(400)
        .body("faults.pointer", hasItem("/cases/0"))
        .body("faults.pointer", hasItem("/text"))
        .body("faults.pointer", hasItem("/x"));
  }

  private static String asking(String key, String clinic, String nickname, String round) {
    String cases = clinic + "/cases";
    String id =
        send("POST", key, cases, "{\"nickname\": \"" + nickname + "\"}").extract().path("id");
    send("POST", key, cases + "/" + id + "/rounds", round).statusCode(201);
    return id;
  }

  @Test
  void what_posts_say_of_earlier_changes_makes_a_case_stuck_and_frees_it() {
    ValidatableResponse opened =
        send("POST", null, "/v1/clinics", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
    String organiser = opened.extract().path("key.key");
    String clinic = "/v1/clinics/" + opened.extract().path("clinic.id");
    String id =
        asking(organiser, clinic, "Wrenna", "{\"text\": \"The band rides up at the back.\"}");
    String rounds = clinic + "/cases/" + id + "/rounds";
    String[][] posts = {
      {"Took the band in by 2 cm and it got no better, it still rides up at the back.", "waiting"},
      {"I shortened the straps and that made it worse. It rides up at the back.", "stuck"},
      {"Took the band in by 2 cm more, which helped a lot. The straps slip off.", "waiting"},
    };
    for (String[] post : posts) {
      send("POST", organiser, rounds, "{\"text\": \"" + post[0] + "\"}").statusCode(201);
      send("GET", organiser, clinic + "/queue", null).body("entries.reason", contains(post[1]));
    }
  }
}
