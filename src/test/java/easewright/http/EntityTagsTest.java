package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What does not depend on a fitting is sent again only when it changed (RFC 9110, section 13.1.2).
 */
@QuarkusTest
class EntityTagsTest {
  private static String tag(String path) {
    Response first = given().get(path);
    assertEquals(200, first.statusCode());
    String tag = first.header("ETag");
    assertTrue(tag.matches("W/\"[0-9a-f]{64}\""), tag);
    return tag;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/v1/signs",
        "/rules",
        "/rules/signs/straps-slip-off",
        "/rules/garment.svg",
        "/drawings/underband-centre-back.svg",
        "/openapi.yaml",
        "/openapi.json",
        "/openapi-3.0.yaml",
        "/openapi-3.0.json",
        "/examples/first-fitting.json",
        "/v1/pattern-sheets",
        "/v1/pattern-sheets/quillmere-top",
        "/v1/pattern-sheet.schema.json",
        "/v1/check-sheets/measuring",
        "/v1/check-sheets/cloth",
        "/api",
        "/problems/unreadable"
      })
  void what_a_client_has_is_not_sent_again(String path) {
    String tag = tag(path);
    assertEquals(tag, tag(path));
    for (String sent :
        new String[] {tag, tag.substring(2), "\"other\", " + tag, "*", "W/\"a\",W/\"b\"," + tag}) {
      Response again = given().header("If-None-Match", sent).get(path);
      assertEquals(304, again.statusCode(), sent);
      assertEquals("", again.asString());
      assertEquals(tag, again.header("ETag"));
      assertTrue(again.headers().getValues("Vary").contains("Accept"));
    }
    for (String other : new String[] {"W/\"other\"", "other", "", "W/" + tag}) {
      given().header("If-None-Match", other).get(path).then().statusCode(200);
    }
  }

  @Test
  void forms_of_one_address_have_tags_of_their_own() {
    String json = given().accept("application/json").get("/rules").header("ETag");
    String html = given().accept("text/html").get("/rules").header("ETag");
    assertNotEquals(json, html);
    given()
        .accept("text/html")
        .header("If-None-Match", json)
        .get("/rules")
        .then()
        .statusCode(200)
        .header("Vary", not(nullValue()));
  }

  @Test
  void the_json_is_what_it_was_without_a_tag() {
    given()
        .get("/v1/signs")
        .then()
        .statusCode(200)
        .header("Cache-Control", equalTo("no-cache"))
        .body("id", hasItem("straps-slip-off"));
    given().get("/v1/pattern-sheets/quillmere-top").then().body("id", equalTo("quillmere-top"));
    given()
        .get("/drawings/underband-centre-back.svg")
        .then()
        .header("Cache-Control", equalTo("public, max-age=86400"));
  }

  @Test
  void what_is_not_there_is_not_unchanged() {
    for (String path : new String[] {"/rules/none", "/drawings/none.svg", "/examples/none"}) {
      given().header("If-None-Match", "*").get(path).then().statusCode(404);
    }
  }

  @Test
  void answers_and_clinics_have_no_tag() {
    given()
        .contentType("application/json")
        .body("{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"77 cm\"}}")
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .header("ETag", nullValue())
        .header("Cache-Control", equalTo("no-store"));
    given().get("/desk/clinics/new").then().header("ETag", nullValue());
  }
}
