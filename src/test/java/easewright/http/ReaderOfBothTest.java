package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** With {@code easewright.reader=both} posts are read, whether a model is there or not. */
@Tag("long")
@QuarkusTest
@TestProfile(ReaderOfBothTest.Both.class)
class ReaderOfBothTest {
  /** Turns the trained reader on. */
  public static class Both implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of("easewright.reader", "both");
    }
  }

  @Test
  void a_plain_post_is_read() {
    for (int i = 0; i < 2; i++) {
      given()
          .contentType("application/json")
          .body(Map.of("text", "My soft bra: the band rides up at the back. I fainted in it."))
          .post("/v1/intakes")
          .then()
          .statusCode(200)
          .body("kind", equalTo("fit-question"))
          .body("fitting.signs.sign", hasItem("band-rides-up-at-the-back"))
          .body("fitting.signs.sign", hasItem("fainted-or-blacked-out"));
    }
  }
}
