package easewright.http;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The operator can restrict the service to holders of a clinic's key. */
@Tag("long")
@QuarkusTest
@TestProfile(ClosedServiceTest.Closed.class)
class ClosedServiceTest {
  private static final String FITTING = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}";

  /** Closed, with a founding key. */
  public static class Closed implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "easewright.open", "false",
          "easewright.clinic.founding-key", "a long word for founders",
          "easewright.clinic.store", "target/closed-store");
    }
  }

  private static RequestSpecification with(String key) {
    return given().header("Authorization", "Bearer " + key);
  }

  private static String organisersKey() {
    return with("a long word for founders")
        .contentType(ContentType.JSON)
        .body("{\"name\": \"Thursday sewing circle\", \"organiser\": \"Odile\"}")
        .post("/v1/clinics")
        .then()
        .statusCode(201)
        .extract()
        .path("key.key");
  }

  @Test
  void a_stranger_gets_no_answer_whichever_way_the_address_is_written() {
    for (String path :
        List.of(
            "/v1/fittings",
            "/v1//fittings",
            "/v1/fittings/",
            "/v1;a=b/fittings",
            "/v1/clinics/../fittings",
            "/v1/./fittings",
            "/v1/%66ittings")) {
      int status =
          given()
              .urlEncodingEnabled(false)
              .contentType(ContentType.JSON)
              .body(FITTING)
              .post(path)
              .statusCode();
      assertEquals(401, status, path);
    }
    for (String path : List.of("/v1/signs", "/v1/pattern-sheets", "/v1/check-sheets/cloth")) {
      given().get(path).then().statusCode(401).body("type", equalTo("/problems/key-needed"));
    }
    given()
        .contentType("application/x-ndjson")
        .body(FITTING.getBytes(UTF_8))
        .post("/v1/fittings")
        .then()
        .statusCode(401);
    given().contentType(ContentType.JSON).body("{}").post("/mcp").then().statusCode(401);
  }

  @Test
  void any_key_of_a_clinic_opens_the_service() {
    String key = organisersKey();
    with(key)
        .contentType(ContentType.JSON)
        .body(FITTING)
        .post("/v1/fittings")
        .then()
        .statusCode(200);
    with(key)
        .contentType("application/x-ndjson")
        .body((FITTING + "\n" + FITTING).getBytes(UTF_8))
        .post("/v1/fittings")
        .then()
        .statusCode(200);
    String large = FITTING + " ".repeat(100_000);
    with(key).contentType(ContentType.JSON).body(large).post("/v1/fittings").then().statusCode(200);
    with(key).get("/v1/signs").then().statusCode(200);
  }

  @Test
  void what_replies_link_to_stays_open_to_read() {
    for (String path :
        List.of("/rules", "/rules/garment.svg", "/problems/key-needed", "/openapi.yaml")) {
      given().get(path).then().statusCode(200);
    }
  }

  @Test
  void the_desk_requires_signing_in_and_its_cookie_opens_nothing_else() {
    String key = organisersKey();
    for (String path : List.of("/desk", "/desk/size", "/desk/cut?sheet=quillmere-top")) {
      given()
          .redirects()
          .follow(false)
          .get(path)
          .then()
          .statusCode(302)
          .header("Location", endsWith("/desk/sign-in"));
      given().cookie("easewright-key", key).get(path).then().statusCode(200);
    }
    given()
        .contentType("application/x-www-form-urlencoded")
        .body("text=band")
        .post("/desk/answer")
        .then()
        .statusCode(401);
    given()
        .cookie("easewright-key", key)
        .contentType("application/x-www-form-urlencoded")
        .body("text=band")
        .post("/desk/answer")
        .then()
        .statusCode(200);
    given()
        .cookie("easewright-key", key)
        .contentType(ContentType.JSON)
        .body(FITTING)
        .post("/v1/fittings")
        .then()
        .statusCode(401);
    for (String path :
        List.of("/desk/sign-in", "/desk/look.css", "/desk/desk.js", "/desk/clinics/new")) {
      given().get(path).then().statusCode(200);
    }
  }

  @Test
  void a_clinic_is_opened_at_the_desk_only_with_the_founding_key() {
    for (String wrong : List.of("", "a long word for founder")) {
      founding(wrong).statusCode(422).header("Set-Cookie", nullValue());
    }
    founding("a long word for founders")
        .statusCode(201)
        .header("Cache-Control", "no-store")
        .header("Set-Cookie", startsWith("easewright-key=ewo-"))
        .body(containsString("It is shown only this once"));
  }

  private static ValidatableResponse founding(String key) {
    return given()
        .accept("text/html")
        .contentType("application/x-www-form-urlencoded")
        .formParam("/name", "Thursday sewing circle")
        .formParam("/organiser", "Odile")
        .formParam("foundingKey", key)
        .post("/desk/clinics/new")
        .then();
  }

  @Test
  void opening_a_clinic_requires_the_founding_key() {
    String clinic = "{\"name\": \"Other\", \"organiser\": \"Odile\"}";
    String key = organisersKey();
    for (String wrong : List.of("", "a long word for founder", key)) {
      with(wrong)
          .contentType(ContentType.JSON)
          .body(clinic)
          .post("/v1/clinics")
          .then()
          .statusCode(401);
    }
    given().contentType(ContentType.JSON).body(clinic).post("/v1/clinics").then().statusCode(401);
  }
}
