package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A closed service that cannot look up a key in its store reports this as a regular problem. */
@Tag("long")
@QuarkusTest
@TestProfile(ClosedWithoutStoreTest.NoStore.class)
class ClosedWithoutStoreTest {
  /** A closed service whose store is never reachable. */
  public static class NoStore implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.open", "false",
          "easewright.clinic.url", "jdbc:postgresql://127.0.0.1:1/none?connectTimeout=1");
    }
  }

  @Test
  void a_key_that_cannot_be_looked_up_is_a_problem_without_reasons() {
    given()
        .header("Authorization", "Bearer ewo-" + "a".repeat(16) + "-" + "a".repeat(40))
        .contentType("application/json")
        .body("{}")
        .post("/v1/fittings")
        .then()
        .statusCode(503)
        .header("Retry-After", "5")
        .contentType("application/problem+json")
        .body("type", equalTo("/problems/store-away"));
  }
}
