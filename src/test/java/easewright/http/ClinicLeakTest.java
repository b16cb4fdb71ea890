package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.answering.RoundReader;
import easewright.clinic.ClinicStore;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** No combination of key and ids leaks anything of a case to another clinic. */
@QuarkusTest
class ClinicLeakTest {
  private static final int DRAWS = 600;

  @Inject ClinicStore store;
  @Inject RoundReader fittings;

  @Test
  void random_keys_and_ids_reach_a_case_only_within_its_clinic() {
    Random random = new Random(20260301);
    List<StockedClinic> clinics = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      clinics.add(StockedClinic.in(store, fittings));
    }
    List<String> before = clinics.stream().map(one -> one.contents(store)).toList();
    int reached = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      StockedClinic holder = clinics.get(random.nextInt(clinics.size()));
      StockedClinic asked = clinics.get(random.nextInt(clinics.size()));
      StockedClinic owner = clinics.get(random.nextInt(clinics.size()));
      String clinic = possiblyCorrupted(asked.id(), random);
      String id = possiblyCorrupted(owner.open().id(), random);
      Response response =
          ask(random, random.nextBoolean() ? holder.organiser().text() : holder.helper().text())
              .get("/v1/clinics/{clinic}/cases/{case}", clinic, id);
      if (clinic.equals(holder.id()) && id.equals(holder.open().id())) {
        assertEquals(200, response.statusCode());
        reached++;
      } else {
        assertEquals(404, response.statusCode());
        assertFalse(response.asString().contains("Wrenna"));
        assertFalse(response.asString().contains("94 cm"));
      }
    }
    assertTrue(reached > 5, "Too few draws met their own case: " + reached);
    assertEquals(before, clinics.stream().map(one -> one.contents(store)).toList());
  }

  @Test
  void another_clinics_case_cannot_be_changed_or_distinguished_from_a_missing_one() {
    StockedClinic mine = StockedClinic.in(store, fittings);
    StockedClinic theirs = StockedClinic.in(store, fittings);
    String before = theirs.contents(store);
    String[][] changes = {
      {"POST", "/taking", "{\"version\": 1}"},
      {"POST", "/closing", "{\"version\": 1}"},
      {"POST", "/handing-over", "{\"version\": 1}"},
      {"POST", "/rounds", StockedClinic.ROUND},
      {"PUT", "/rounds/1/reply", "{\"version\": 1, \"text\": \"Mine.\"}"},
      {"PUT", "/rounds/1/outcome", "{\"outcome\": \"worse\"}"},
      {"POST", "/notes", "{\"text\": \"Mine.\"}"},
      {"POST", "/wearer-link", ""},
      {"GET", "/export", ""},
      {"DELETE", "", ""},
    };
    for (String[] change : changes) {
      List<String> answers = new ArrayList<>();
      for (String id : List.of(theirs.open().id(), "a".repeat(16))) {
        var request = ask(new Random(1), mine.organiser().text());
        if (!change[2].isEmpty()) {
          request.contentType(ContentType.JSON).body(change[2]);
        }
        Response response =
            request.request(change[0], "/v1/clinics/" + mine.id() + "/cases/" + id + change[1]);
        answers.add(response.statusCode() + response.asString());
      }
      assertTrue(answers.get(0).startsWith("404"), change[1] + answers);
      assertEquals(answers.get(1), answers.get(0));
    }
    given()
        .header("Authorization", "Bearer " + mine.organiser().text())
        .delete("/v1/clinics/" + mine.id() + "/keys/" + theirs.helper().id())
        .then()
        .statusCode(404);
    assertEquals(before, theirs.contents(store));
  }

  private static io.restassured.specification.RequestSpecification ask(Random random, String key) {
    // The scheme's name is not case sensitive (RFC 9110, section 11.1).
    return given().header("Authorization", (random.nextBoolean() ? "Bearer " : "bearer ") + key);
  }

  private static String possiblyCorrupted(String id, Random random) {
    if (random.nextInt(4) > 0) {
      return id;
    }
    int place = random.nextInt(id.length());
    char other = id.charAt(place) == 'b' ? 'c' : 'b';
    return id.substring(0, place) + other + id.substring(place + 1);
  }
}
