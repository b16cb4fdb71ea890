package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A service that listens beyond its own machine opens clinics only with the founding key. */
@Tag("long")
@QuarkusTest
@TestProfile(FoundingFromAfarTest.Everywhere.class)
class FoundingFromAfarTest {
  /** As in a container, without further settings. */
  public static class Everywhere implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("quarkus.http.host", "0.0.0.0");
    }
  }

  @Test
  void opening_a_clinic_requires_a_founding_key_but_answers_do_not() {
    given()
        .contentType("application/json")
        .body("{\"name\": \"Circle\", \"organiser\": \"Odile\"}")
        .post("/v1/clinics")
        .then()
        .statusCode(403)
        .body("type", equalTo("/problems/founding-key-needed"))
        .body("detail", containsString("easewright.clinic.founding-key"));
    given().post("/v1/clinics/samples").then().statusCode(403);
    given()
        .contentType("application/json")
        .body("{\"signs\": [{\"sign\": \"straps-slip-off\"}]}")
        .post("/v1/fittings")
        .then()
        .statusCode(200);
  }
}
