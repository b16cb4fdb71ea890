package easewright.fuzz;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import easewright.clinic.RealPostgres;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** With the store on a server, which takes no NUL and no half of a pair in a text. */
@Tag("long")
@QuarkusTest
@TestProfile(EndpointsOnPostgresFuzzTest.OnServer.class)
class EndpointsOnPostgresFuzzTest extends EndpointsFuzz {
  /** A service with a server of its own. */
  public static class OnServer implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return RealPostgres.settings();
    }
  }

  @Test
  void a_text_that_the_store_cannot_keep_is_a_fault_at_its_field() {
    KeptClinic kept = KeptClinic.in(store, fittings);
    String cases = "/v1/clinics/" + kept.id() + "/cases/" + kept.caseId();
    String[][] sent = {
      {"POST", cases + "/notes", "{\"text\": \"a\\u0000b\"}", "/text"},
      {
        "PUT",
        cases + "/rounds/1/outcome",
        "{\"outcome\": \"same\", \"said\": \"\\u0000b\"}",
        "/said"
      },
      {"PUT", cases + "/rounds/1/reply", "{\"version\": 2, \"text\": \"\\u0000b\"}", "/text"},
      {"POST", cases + "/rounds", "{\"text\": \"The straps slip off.\\u0000\"}", "/text"},
      {"POST", "/v1/clinics/" + kept.id() + "/cases", "{\"nickname\": \"\\u0000b\"}", "/nickname"}
    };
    for (String[] one : sent) {
      given()
          .header("Authorization", "Bearer " + kept.organiser().text())
          .contentType("application/json")
          .body(one[2])
          .request(one[0], one[1])
          .then()
          .statusCode(400)
          .body("faults[0].pointer", equalTo(one[3]));
    }
  }
}
