package easewright.http;

import static easewright.http.ContractSchemas.CONTRACT;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import easewright.contract.Contract;
import easewright.http.Examples.Example;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The service conforms to its contract. A general validator runs the schemas (JSON Schema 2020-12);
 * problems have the members of RFC 9457 section 3.1.
 */
@QuarkusTest
class ContractTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private final ContractSchemas schemas = new ContractSchemas();

  static List<Example> examples() {
    return Examples.all();
  }

  private static Response post(Example example, String accept) throws IOException {
    // JSON (RFC 8259, section 8.1) and YAML (RFC 9512) are sent in UTF-8.
    return given()
        .contentType(example.form())
        .accept(accept)
        .body(example.request().getBytes(StandardCharsets.UTF_8))
        .post(example.path());
  }

  private static Response post(String body) {
    return given().contentType(ContentType.JSON).body(body).post("/v1/fittings");
  }

  private static JsonNode full(String body) throws IOException {
    return json(given().contentType(ContentType.JSON).body(body).post("/v1/fittings?detail=full"));
  }

  private static JsonNode json(Response response) throws IOException {
    return JSON.readTree(response.asByteArray());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_is_of_the_form_the_contract_gives(Example example) throws IOException {
    ObjectMapper form = example.file().endsWith(".yaml") ? new YAMLMapper() : JSON;
    // For a pattern sheet the contract only refers to its separate schema.
    if (!example.schema().equals("PatternSheet")) {
      schemas.assertValid(example.schema(), form.readTree(example.request()));
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_is_answered_in_the_form_the_contract_gives(Example example) throws IOException {
    Response response = post(example, "application/json");
    assertEquals(example.status(), response.statusCode(), response::asString);
    schemas.assertValid(example.answerSchema(), json(response));
  }

  @ParameterizedTest
  @MethodSource("answered")
  void a_full_answer_is_of_the_form_the_contract_gives_too(Example example) throws IOException {
    Response response =
        given()
            .contentType(example.form())
            .body(example.request().getBytes(StandardCharsets.UTF_8))
            .post(example.path() + "?detail=full");
    schemas.assertValid(example.answerSchema(), json(response));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_gives_its_recorded_answer(Example example) throws IOException {
    Examples.assertAlike(example.name(), json(post(example, "application/json")));
  }

  /** One fitting per line: RFC 8259 values, a line feed after each. */
  @Test
  void an_example_of_many_fittings_gives_its_recorded_answers() throws IOException {
    String name = "several-fittings";
    List<JsonNode> now = new ArrayList<>();
    Response response =
        given()
            .contentType(BulkRoute.FORM)
            .body(Examples.lines(name).getBytes(StandardCharsets.UTF_8))
            .post("/v1/fittings");
    for (String answer :
        new String(response.asByteArray(), StandardCharsets.UTF_8).lines().toList()) {
      now.add(Examples.withoutHash(JSON.readTree(answer)));
    }
    List<JsonNode> recorded = Examples.answers(name, now);
    assertEquals(recorded.size(), now.size());
    for (int i = 0; i < now.size(); i++) {
      Examples.assertAlike(recorded.get(i), now.get(i), "line " + (i + 1));
    }
    for (JsonNode answer : now) {
      schemas.assertValid(answer.has("status") ? "Problem" : "Answer", answer);
    }
    given()
        .get("/examples/" + name + ".ndjson")
        .then()
        .statusCode(200)
        .contentType(containsString(BulkRoute.FORM));
  }

  static List<Example> answered() {
    return Examples.all().stream().filter(example -> example.status() == 200).toList();
  }

  @ParameterizedTest
  @MethodSource("answered")
  void an_example_is_answered_in_every_form_offered(Example example) throws IOException {
    for (String form : example.answerForms()) {
      Response response = post(example, form);
      assertEquals(example.status(), response.statusCode(), response::asString);
      assertFalse(response.asString().contains("null"), response::asString);
      assertFalse(response.asString().contains("NOT_FOUND"), response::asString);
    }
  }

  static List<Example> fittings() {
    return answered().stream().filter(one -> one.path().equals("/v1/fittings")).toList();
  }

  @ParameterizedTest
  @MethodSource("fittings")
  void what_a_fitting_gives_to_go_on_from_gets_the_same_answer(Example example) throws IOException {
    ObjectNode answer = (ObjectNode) full(example.request());
    answer.remove("read"); // sent once; its content is in the fields now
    answer.remove("reply"); // it answers what the text asks
    ObjectNode again = (ObjectNode) full(answer.path("soFar").toString());
    again.remove("reply");
    assertEquals(answer, again);
  }

  @Test
  void every_refusal_is_of_the_form_the_contract_gives() throws IOException {
    for (Response refusal :
        List.of(
            post("{"),
            post("{}"),
            post("{\"x\": 1, \"body\": {\"bust\": 9}}"),
            post(" ".repeat(256 * 1024 + 1)),
            given().get("/v1/fittings"),
            given().get("/nowhere"),
            given().contentType("text/plain").body("x").post("/v1/fittings"),
            given().accept("image/png").get("/v1/signs"))) {
      assertTrue(refusal.statusCode() >= 400);
      assertEquals("application/problem+json", refusal.contentType());
      JsonNode problem = json(refusal);
      schemas.assertValid("Problem", problem);
      assertEquals(refusal.statusCode(), problem.path("status").intValue());
    }
  }

  @ParameterizedTest
  @MethodSource("lists")
  void a_list_is_of_the_form_the_contract_gives(String path, String schema) throws IOException {
    JsonNode list = json(given().accept("application/json").get(path));
    assertTrue(list.isArray() && !list.isEmpty(), path);
    for (JsonNode entry : list) {
      schemas.assertValid(schema, entry);
    }
  }

  static List<Object[]> lists() {
    return List.of(
        new Object[] {"/v1/signs", "Sign"},
        new Object[] {"/v1/pattern-sheets", "SheetEntry"},
        new Object[] {"/rules", "RuleEntry"});
  }

  @Test
  void what_a_list_links_to_is_there() throws IOException {
    for (JsonNode entry : json(given().accept("application/json").get("/rules"))) {
      Response page = given().accept("application/json").get(entry.path("page").textValue());
      schemas.assertValid("RulePage", json(page));
    }
    for (JsonNode entry : json(given().get("/v1/pattern-sheets"))) {
      Response sheet = given().get(entry.path("link").textValue());
      assertEquals(entry.path("id"), json(sheet).path("id"));
    }
  }

  @Test
  void what_the_schema_refuses_the_service_refuses_as_unreadable() throws IOException {
    for (String request :
        List.of(
            "{\"signs\": [{}]}",
            "{\"signs\": [{\"sign\": \"straps-slip-off\", \"side\": \"up\"}]}",
            "{\"units\": \"feet\"}",
            "{\"body\": {\"waist\": 70}}",
            "{\"body\": {\"bust\": 94}}",
            "{\"elastic\": {\"load\": \"6 N\"}}",
            "{\"cloth\": {\"main\": {\"along\": {\"marked\": \"1 cm\", \"stretched\": \"2 cm\"}}}}",
            "{\"couldNotTell\": [\"no such sign\"]}",
            "{\"asked\": \"no such sign\"}",
            "{\"pattern\": {}}")) {
      assertFalse(schemas.errors("Fitting", JSON.readTree(request)).isEmpty(), request);
      assertEquals(400, post(request).statusCode(), request);
    }
  }

  @Test
  void every_schema_is_one_by_the_2020_12_metaschema_and_every_property_is_described()
      throws IOException {
    var metaschema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    List<String> undescribed = new ArrayList<>();
    for (Map.Entry<String, JsonNode> schema :
        CONTRACT.path("components").path("schemas").properties()) {
      assertTrue(metaschema.validate(schema.getValue()).isEmpty(), schema.getKey());
      undescribed(schema.getValue(), schema.getKey(), undescribed);
    }
    assertEquals(List.of(), undescribed);
  }

  private static void undescribed(JsonNode schema, String path, List<String> into) {
    JsonNode target =
        schema.has("$ref") ? CONTRACT.at(schema.path("$ref").textValue().substring(1)) : schema;
    if (!schema.has("description") && !target.has("description")) {
      into.add(path);
    }
    for (Map.Entry<String, JsonNode> property : schema.path("properties").properties()) {
      undescribed(property.getValue(), path + "/" + property.getKey(), into);
    }
    if (schema.has("items")) {
      undescribed(schema.path("items"), path + "[]", into);
    }
  }

  @Test
  void every_example_the_contract_names_is_a_file() throws IOException {
    List<String> missing = new ArrayList<>();
    for (JsonNode file : CONTRACT.findValues("externalValue")) {
      String name = file.textValue().replace("examples/", "");
      if (Contract.example(name).isEmpty()) {
        missing.add(name);
      }
    }
    assertEquals(List.of(), missing);
  }
}
