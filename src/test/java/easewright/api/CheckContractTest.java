package easewright.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The checks keep the contract; schemas are run by a general validator (JSON Schema 2020-12). */
@QuarkusTest
class CheckContractTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private final ContractSchemas schemas = new ContractSchemas();

  static List<String> examples() throws IOException {
    List<String> names = new ArrayList<>(Examples.names("size-check-"));
    names.addAll(Examples.names("cloth-check-"));
    return names;
  }

  private static boolean aboutSize(String name) {
    return name.startsWith("size");
  }

  private static Response post(String name, String form) throws IOException {
    return given()
        .contentType(ContentType.JSON)
        .accept(form)
        .body(Examples.request(name).toString())
        .post(aboutSize(name) ? "/v1/size-checks" : "/v1/cloth-checks");
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_has_the_form_of_the_contract_and_gives_its_recorded_answer(String name)
      throws IOException {
    boolean impossible = name.endsWith("impossible");
    if (!name.equals("cloth-check-impossible")) {
      schemas.assertValid(
          aboutSize(name) ? "SizeQuestion" : "ClothQuestion", Examples.request(name));
    }
    Response response = post(name, "application/json");
    assertEquals(impossible ? 422 : 200, response.statusCode(), response::asString);
    assertEquals("no-store", response.header("Cache-Control"));
    JsonNode answer = JSON.readTree(response.asByteArray());
    schemas.assertValid(
        impossible ? "Problem" : aboutSize(name) ? "SizeAnswer" : "ClothAnswer", answer);
    JsonNode now = Examples.withoutHash(answer);
    assertEquals(Examples.answer(name, now), now);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_is_answered_as_a_post_and_as_a_page(String name) throws IOException {
    if (name.endsWith("impossible")) {
      return;
    }
    for (String form : List.of("text/markdown", "text/html")) {
      Response response = post(name, form);
      assertEquals(200, response.statusCode(), response::asString);
      String said = response.asString();
      for (String slip : List.of("null", "NOT_FOUND", "{", "\n\n\n\n")) {
        String text = said.replaceAll("(?s)<style>.*?</style>", "");
        assertFalse(
            text.contains(slip) && !(slip.startsWith("\n") && form.equals("text/html")), text);
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
