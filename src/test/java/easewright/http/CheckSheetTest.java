package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CheckSheetTest {
  private static String page(String name) {
    return given()
        .get("/v1/check-sheets/" + name)
        .then()
        .statusCode(200)
        .contentType("text/html")
        .extract()
        .asString();
  }

  @Test
  void a_blank_sheet_needs_nothing_from_elsewhere_and_names_every_drawing() {
    for (String name : List.of("measuring", "cloth")) {
      String page = page(name);
      assertFalse(page.matches("(?s).*(src=|@import|url\\(|https?://|<script).*"), name);
      assertEquals(page.split("<svg ").length, page.split("role=\"img\" aria-label=\"").length);
      assertEquals(4, page.split("<svg ").length, name);
    }
    given().get("/v1/check-sheets/shoes").then().statusCode(404);
  }

  // The measurements of the contract's Body.
  @Test
  void the_measuring_sheet_has_a_row_for_every_measurement_a_request_takes() {
    String page = page("measuring");
    int rows = page.split("<th scope=\"row\">").length - 1;
    assertEquals(ContractSchemas.CONTRACT.at("/components/schemas/Body/properties").size(), rows);
  }

  @Test
  void the_cloth_sheet_has_the_same_steps_as_answers() {
    String page = page("cloth");
    List<String> steps =
        given()
            .contentType("application/json")
            .body(
                "{\"cloth\": {\"main\": {\"around\": {\"marked\": \"10 cm\", \"stretched\": \"15 cm\"}}}}")
            .post("/v1/cloth-checks?detail=full")
            .jsonPath()
            .getList("protocol.cloth");
    assertTrue(steps.size() >= 5);
    steps.forEach(step -> assertTrue(page.contains(step), step));
  }
}
