package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.http.Examples.Example;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The checks conform to the contract; a general validator runs the schemas (JSON Schema 2020-12).
 */
@QuarkusTest
class CheckContractTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private final ContractSchemas schemas = new ContractSchemas();

  static List<Example> examples() {
    return Examples.all().stream()
        .filter(example -> example.path().matches("/v1/(size|cloth)-checks"))
        .filter(example -> example.status() == 200)
        .toList();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_is_answered_as_a_post_and_as_a_page(Example example) throws IOException {
    for (String form : List.of("text/markdown", "text/html")) {
      String said =
          given()
              .contentType(ContentType.JSON)
              .accept(form)
              .body(example.request())
              .post(example.path())
              .then()
              .statusCode(200)
              .extract()
              .asString();
      for (String leftover : List.of("null", "NOT_FOUND", "{", "\n\n\n\n")) {
        String text = said.replaceAll("(?s)<style>.*?</style>", "");
        assertFalse(
            text.contains(leftover) && !(leftover.startsWith("\n") && form.equals("text/html")),
            text);
      }
      assertFalse(said.matches("(?s).*(src=|@import|url\\(|https?://).*"), said);
    }
  }

  @Test
  void what_the_schema_refuses_the_service_refuses_as_unreadable() throws IOException {
    for (String request :
        List.of(
            "{\"system\": \"fr\", \"body\": {\"bust\": \"90 cm\", \"underbust\": \"75 cm\"}}",
            "{\"label\": {}}",
            "{\"label\": {\"text\": \"34 B\", \"printedIn\": \"mars\"}}",
            "{\"label\": \"34 B\"}",
            "{\"sizeCut\": \"80C\"}",
            "{\"construction\": \"loose\"}")) {
      assertFalse(schemas.errors("SizeQuestion", JSON.readTree(request)).isEmpty(), request);
      given()
          .contentType(ContentType.JSON)
          .body(request)
          .post("/v1/size-checks")
          .then()
          .statusCode(400);
    }
    for (String request :
        List.of(
            "{\"cloth\": {\"shell\": {}}}",
            "{\"garment\": {}}",
            "{\"elastic\": {\"load\": \"6 N\"}}")) {
      assertFalse(schemas.errors("ClothQuestion", JSON.readTree(request)).isEmpty(), request);
      given()
          .contentType(ContentType.JSON)
          .body(request)
          .post("/v1/cloth-checks")
          .then()
          .statusCode(400);
    }
  }
}
