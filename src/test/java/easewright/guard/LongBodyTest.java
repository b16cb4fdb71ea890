package easewright.guard;

import static io.restassured.RestAssured.given;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;

/** A request body that arrives in several chunks is read completely. */
@QuarkusTest
class LongBodyTest {
  private static final String FITTING = "{\"signs\":[{\"sign\":\"band-rides-up-at-the-back\"}]}";

  @Test
  void a_body_of_many_pieces_is_answered_as_one_of_a_single_piece() {
    for (int blanks : new int[] {0, 15_000, 40_000, 200_000}) {
      given()
          .contentType("application/json")
          .body(" ".repeat(blanks) + FITTING)
          .post("/v1/fittings")
          .then()
          .statusCode(200);
      given()
          .contentType("application/json")
          .body(FITTING + " ".repeat(blanks))
          .post("/v1/fittings")
          .then()
          .statusCode(200);
    }
  }
}
