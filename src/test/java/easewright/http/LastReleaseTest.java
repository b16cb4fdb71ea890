package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.http.Examples.Example;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Clients of the last release are served on, as openapi/versions.md promises. */
@QuarkusTest
class LastReleaseTest {
  private static final Path FOLDER = Path.of("src/test/resources/easewright/http/last-release");
  private static final JsonNode THEN = ContractSchemas.read(FOLDER.resolve("openapi.yaml"));
  private static final JsonNode NOW = ContractSchemas.CONTRACT;
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final ContractSchemas SCHEMAS = new ContractSchemas(THEN);

  static List<Example> examples() {
    return Examples.all(THEN);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_is_answered_in_the_form_its_client_knows(Example example) throws IOException {
    for (String detail : List.of("", "?detail=full")) {
      Response response =
          given()
              .contentType(example.form())
              .accept("application/json")
              .body(Files.readAllBytes(FOLDER.resolve("examples").resolve(example.file())))
              .post(example.path() + (offersDetail(example) ? detail : ""));
      assertEquals(example.status(), response.statusCode(), response::asString);
      JsonNode answer = JSON.readTree(response.asByteArray());
      SCHEMAS.assertValid(example.answerSchema(), answer);
      if (example.status() != 200) {
        JsonNode then =
            JSON.readTree(FOLDER.resolve("examples/" + example.name() + ".answer.json").toFile());
        assertEquals(then.path("type"), answer.path("type"));
      }
    }
  }

  private static boolean offersDetail(Example example) {
    return THEN.path("paths")
        .path(example.path())
        .at("/post/parameters")
        .findValuesAsText("$ref")
        .contains("#/components/parameters/Detail");
  }

  /** Ids that its clients send or have words for. */
  @ParameterizedTest
  @ValueSource(strings = {"/v1/signs", "/v1/pattern-sheets", "/rules"})
  void every_id_a_list_gave_is_still_given(String list) throws IOException {
    Path file = FOLDER.resolve("ids" + list.replace('/', '-') + ".txt");
    Set<String> gone = new TreeSet<>(Files.readAllLines(file));
    assertFalse(gone.isEmpty(), list);
    for (JsonNode entry : JSON.readTree(given().accept(ContentType.JSON).get(list).asByteArray())) {
      gone.remove(entry.path("id").textValue());
    }
    assertEquals(Set.of(), gone);
  }

  @Test
  void every_operation_its_parameters_media_types_and_statuses_are_still_offered() {
    Set<String> broken = new TreeSet<>();
    for (Map.Entry<String, JsonNode> path : THEN.path("paths").properties()) {
      JsonNode now = NOW.path("paths").path(path.getKey());
      for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
        String place = operation.getKey() + " " + path.getKey();
        if (!operation.getValue().isObject()) {
          continue; // parameters of the path
        }
        JsonNode same = now.path(operation.getKey());
        if (!operation.getValue().path("operationId").equals(same.path("operationId"))) {
          broken.add(place + " is gone or has another name");
        }
        broken.addAll(lost(place, operation.getValue().path("responses"), same.path("responses")));
        broken.addAll(
            lost(
                place,
                operation.getValue().at("/requestBody/content"),
                same.at("/requestBody/content")));
        broken.addAll(parameters(place, operation.getValue(), same));
      }
    }
    assertEquals(Set.of(), broken);
  }

  private static Set<String> parameters(String place, JsonNode then, JsonNode now) {
    Set<String> broken = new TreeSet<>();
    Set<String> known = new TreeSet<>();
    for (JsonNode parameter : then.path("parameters")) {
      known.add(resolved(THEN, parameter).path("name").textValue());
    }
    Set<String> offered = new TreeSet<>();
    for (JsonNode parameter : now.path("parameters")) {
      JsonNode whole = resolved(NOW, parameter);
      offered.add(whole.path("name").textValue());
      if (whole.path("required").booleanValue()
          && !known.contains(whole.path("name").textValue())) {
        broken.add(place + " needs " + whole.path("name"));
      }
    }
    known.removeAll(offered);
    known.forEach(name -> broken.add(place + " knows no parameter " + name));
    return broken;
  }

  private static JsonNode resolved(JsonNode contract, JsonNode node) {
    return node.has("$ref") ? contract.at(node.path("$ref").textValue().substring(1)) : node;
  }

  private static Set<String> lost(String place, JsonNode then, JsonNode now) {
    Set<String> lost = new TreeSet<>();
    then.fieldNames().forEachRemaining(name -> lost.add(place + ": " + name));
    now.fieldNames().forEachRemaining(name -> lost.remove(place + ": " + name));
    return lost;
  }

  @Test
  void every_field_is_still_there_and_means_no_more_work() {
    Set<String> sent = reached(THEN, "requestBody");
    Set<String> answered = reached(THEN, "responses");
    Set<String> broken = new TreeSet<>();
    for (Map.Entry<String, JsonNode> schema : THEN.at("/components/schemas").properties()) {
      String name = schema.getKey();
      JsonNode now = NOW.at("/components/schemas").path(name);
      compare(name, schema.getValue(), now, sent.contains(name), answered.contains(name), broken);
    }
    assertTrue(sent.contains("Fitting") && answered.contains("Answer"));
    assertEquals(Set.of(), broken);
  }

  /** The schemas that a part of any operation needs. */
  private static Set<String> reached(JsonNode contract, String part) {
    Set<String> names = new TreeSet<>();
    contract.path("paths").findValues(part).forEach(one -> reach(contract, one, names));
    return names;
  }

  private static void reach(JsonNode contract, JsonNode from, Set<String> names) {
    for (String target : from.findValuesAsText("$ref")) {
      if (names.add(target.substring(target.lastIndexOf('/') + 1))) {
        reach(contract, contract.at(target.substring(1)), names);
      }
    }
  }

  /** A request that was whole stays whole; what an answer always had stays there. */
  private static void compare(
      String place,
      JsonNode then,
      JsonNode now,
      boolean sent,
      boolean answered,
      Set<String> broken) {
    broken.addAll(lost(place, then.path("properties"), now.path("properties")));
    if (!asSet(then.path("type")).equals(asSet(now.path("type")))) {
      broken.add(place + " is of type " + now.path("type"));
    }
    Set<String> before = asSet(then.path("required"));
    Set<String> needed = asSet(now.path("required"));
    if (sent && !before.containsAll(needed) || answered && !needed.containsAll(before)) {
      broken.add(place + " requires " + needed + ", not " + before);
    }
    Set<String> values = asSet(then.path("enum"));
    Set<String> today = asSet(now.path("enum"));
    if (sent && !today.containsAll(values) || answered && !values.containsAll(today)) {
      broken.add(place + " is one of " + today + ", not of " + values);
    }
    for (Map.Entry<String, JsonNode> property : then.path("properties").properties()) {
      JsonNode kept = now.path("properties").path(property.getKey());
      String below = place + "." + property.getKey();
      if (!kept.isMissingNode()) {
        compare(below, property.getValue(), kept, sent, answered, broken);
      }
    }
    if (then.has("items")) {
      compare(place + "[]", then.path("items"), now.path("items"), sent, answered, broken);
    }
  }

  private static Set<String> asSet(JsonNode list) {
    Set<String> texts = new TreeSet<>();
    if (list.isValueNode()) {
      texts.add(list.asText());
    }
    list.forEach(one -> texts.add(one.asText()));
    return texts;
  }

  /** The newest notes are of the release that the project and its contract call themselves. */
  @Test
  void notes_contract_and_project_name_one_release() throws IOException {
    String version = NOW.at("/info/version").textValue();
    List<String> notes = Files.readAllLines(Path.of("src/packaging/release-notes.md"));
    String newest = notes.stream().filter(line -> line.startsWith("## ")).findFirst().orElseThrow();
    assertEquals("## " + version, newest);
    assertTrue(
        Files.readString(Path.of("pom.xml"))
            .contains("<artifactId>easewright</artifactId>\n  <version>" + version + "</version>"));
  }
}
