package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An unknown family is refused wherever one can be named, and never answered as a bra. */
@QuarkusTest
class FamilyOverHttpTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/v1/fittings",
        "/v1/fittings/checks",
        "/v1/intakes",
        "/v1/size-checks",
        "/v1/cloth-checks",
        "/v1/cut-plans"
      })
  void an_unknown_family_is_refused_with_the_nearest(String path) throws IOException {
    ObjectNode request =
        path.equals("/v1/fittings/checks")
            ? (ObjectNode) Examples.requests("/v1/fittings").get(0)
            : (ObjectNode) Examples.requests(path).get(0);
    refused(path, request.put("family", "sport-bar"), "/family");
  }

  @Test
  void a_sheet_of_an_unknown_family_is_refused_unless_the_request_names_one() throws IOException {
    JsonNode sheet =
        new YAMLMapper()
            .readTree(
                Path.of("src/main/resources/easewright/patterns/quillmere-top.yaml").toFile());
    ObjectNode request = JSON.createObjectNode();
    request.putArray("signs").addObject().put("sign", "neckline-gapes");
    request
        .putObject("pattern")
        .set("inline", ((ObjectNode) sheet.deepCopy()).put("family", "sports-brolly"));
    refused("/v1/fittings", request, "/pattern/inline/family");
    given()
        .contentType("application/json")
        .body(request.put("family", "sports-bra").toString())
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .body("understood.family", equalTo("sports-bra"));
  }

  @Test
  void the_signs_of_a_family_are_listed_by_any_of_its_names() {
    byte[] usual = given().get("/v1/signs").asByteArray();
    assertArrayEquals(usual, given().get("/v1/signs?family=sports-bra").asByteArray());
    assertArrayEquals(usual, given().get("/v1/signs?family=bralette").asByteArray());
    given()
        .get("/v1/signs?family=sport-bar")
        .then()
        .statusCode(422)
        .contentType("application/problem+json")
        .body("faults[0].pointer", equalTo("/family"))
        .body("faults[0].remedy", equalTo("Did you mean \"sports-bra\"?"));
  }

  private static void refused(String path, JsonNode request, String pointer) {
    given()
        .contentType("application/json")
        .body(request.toString())
        .post(path)
        .then()
        .statusCode(422)
        .contentType("application/problem+json")
        .body("faults[0].pointer", equalTo(pointer))
        .body("faults[0].remedy", equalTo("Did you mean \"sports-bra\"?"));
  }
}
