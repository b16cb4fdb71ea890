package easewright.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** What OpenAPI Generator 7.17 and 7.25 were seen to stumble over is not in the copy for it. */
class ForGeneratorsTest {
  private static final String SCHEMA =
      """
      {"components": {"schemas": {
        "Listed": {"oneOf": [{"type": "string"}, {"type": "array"}], "description": "Either."},
        "Named": {"anyOf": [{"required": ["a"]}, {"required": ["b"]}], "type": "object",
                  "properties": {"a": {"type": "string", "default": "x"},
                                 "default": {"type": "string"}, "b": {"$ref": "#"}}},
        "Set": {"type": "array", "uniqueItems": true, "items": {"type": "string", "enum": ["a"]}},
        "Free": {"type": "object", "description": "Anything."},
        "Amount": {"oneOf": [{"type": "string"}, {"type": "object", "properties": {}}]},
        "Open": {"type": "object", "properties": {"a": {"type": "string"}},
                 "additionalProperties": {"type": "string"}},
        "Map": {"type": "object", "additionalProperties": {"type": "string"}},
        "Both": {"allOf": [{"$ref": "#"}]}
      }}, "content": {"examples": {"one": {"externalValue": "examples/one.json"}}}}
      """;

  @Test
  void what_has_no_type_is_left_out_and_the_rest_stays() throws IOException {
    JsonNode loose = new ObjectMapper().readTree(ForGenerators.of(SCHEMA, "json"));
    JsonNode schemas = loose.at("/components/schemas");
    assertFalse(schemas.at("/Listed").has("oneOf"));
    assertEquals("Either.", schemas.at("/Listed/description").asText());
    assertFalse(schemas.at("/Named").has("anyOf"));
    assertFalse(schemas.at("/Named/properties/a").has("default"));
    assertTrue(schemas.at("/Named/properties").has("default"), "a property of this name");
    assertFalse(schemas.at("/Set").has("uniqueItems"));
    assertTrue(schemas.at("/Free/additionalProperties").asBoolean());
    assertFalse(schemas.at("/Amount").has("oneOf"));
    assertTrue(schemas.at("/Open/additionalProperties").isBoolean());
    assertTrue(schemas.at("/Map/additionalProperties").isObject());
    assertTrue(schemas.at("/Both").has("allOf"));
    assertFalse(loose.at("/content").has("examples"));
  }

  @Test
  void both_forms_say_the_same_and_keep_every_operation() throws IOException {
    JsonNode json = new ObjectMapper().readTree(Contract.older("json"));
    assertEquals(json, new YAMLMapper().readTree(Contract.older("yaml")));
    assertEquals(
        Contract.tree().path("paths").properties().stream().map(one -> one.getKey()).toList(),
        json.path("paths").properties().stream().map(one -> one.getKey()).toList());
    assertEquals(
        Contract.tree().at("/components/schemas").size(), json.at("/components/schemas").size());
  }
}
