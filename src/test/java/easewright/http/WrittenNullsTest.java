package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.http.Examples.Example;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A client that writes null for whatever it leaves out, as many generated ones do, is answered. */
@QuarkusTest
class WrittenNullsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  static List<Example> examples() {
    return Examples.all().stream()
        .filter(example -> example.status() == 200 && example.file().endsWith(".json"))
        .toList();
  }

  private static Response post(String path, JsonNode request) {
    return given().contentType("application/json").body(request.toString()).post(path);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void an_example_with_nulls_is_answered_as_without(Example example) throws IOException {
    JsonNode request = JSON.readTree(example.request());
    JsonNode written = request.deepCopy();
    JsonNode schema = ContractSchemas.CONTRACT.at("/components/schemas/" + example.schema());
    assertTrue(writeNulls(schema, written) > 0, "the contract offers more than is sent");
    JsonNode answer = JSON.readTree(post(example.path(), request).asByteArray());
    Response withNulls = post(example.path(), written);
    assertEquals(200, withNulls.statusCode(), withNulls::asString);
    assertEquals(answer, JSON.readTree(withNulls.asByteArray()));
    if (answer.has("soFar")) {
      JsonNode soFar = answer.path("soFar").deepCopy();
      writeNulls(ContractSchemas.CONTRACT.at("/components/schemas/Fitting"), soFar);
      assertEquals(200, post(example.path(), soFar).statusCode());
    }
  }

  /** Writes null for each field of the schema that is missing, and returns how many. */
  private static int writeNulls(JsonNode schema, JsonNode value) {
    JsonNode whole =
        schema.has("$ref")
            ? ContractSchemas.CONTRACT.at(schema.path("$ref").textValue().substring(1))
            : schema;
    int written = 0;
    for (JsonNode item : value.isArray() ? value : JSON.createArrayNode()) {
      written += writeNulls(whole.path("items"), item);
    }
    if (value instanceof ObjectNode object) {
      for (Map.Entry<String, JsonNode> property : whole.path("properties").properties()) {
        if (object.has(property.getKey())) {
          written += writeNulls(property.getValue(), object.path(property.getKey()));
        } else {
          object.putNull(property.getKey());
          written++;
        }
      }
    }
    return written;
  }

  /** A null that is no field says nothing that could be left out. */
  @Test
  void a_null_in_a_list_or_instead_of_a_request_is_refused() throws IOException {
    for (String request : List.of("null", "{\"signs\": [null]}", "{\"whyNot\": [null]}")) {
      Response refused = post("/v1/fittings", JSON.readTree(request));
      assertEquals(400, refused.statusCode(), request + refused.asString());
    }
  }
}
