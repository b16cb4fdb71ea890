package easewright.http;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Validates against a contract's schemas with a general validator, in the dialect of OpenAPI 3.1
 * section 4.8.24: JSON Schema 2020-12.
 */
final class ContractSchemas {
  static final JsonNode CONTRACT = contract();

  private final SchemaRegistry registry =
      SchemaRegistry.withDefaultDialect(
          SpecificationVersion.DRAFT_2020_12,
          builder ->
              builder.schemaRegistryConfig(
                  SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build()));
  private final Map<String, Schema> schemas = new HashMap<>();
  private final JsonNode components;

  /** Today's contract. Objects are closed, so that an undocumented field is an error. */
  ContractSchemas() {
    components = CONTRACT.path("components").deepCopy();
    close(components);
  }

  /** Any contract. Objects are open, as to a client that skips what it does not know. */
  ContractSchemas(JsonNode contract) {
    components = contract.path("components").deepCopy();
    open(components);
  }

  List<Error> errors(String name, JsonNode instance) {
    return schemas.computeIfAbsent(name, this::schema).validate(instance);
  }

  void assertValid(String name, JsonNode instance) {
    List<Error> errors = errors(name, instance);
    assertTrue(errors.isEmpty(), () -> name + ": " + errors);
  }

  private Schema schema(String name) {
    ObjectNode root = new ObjectMapper().createObjectNode();
    root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    root.put("$ref", "#/components/schemas/" + name);
    root.set("components", components);
    return registry.getSchema(root);
  }

  private static void close(JsonNode node) {
    if (node.path("properties").isObject() && !node.has("additionalProperties")) {
      ((ObjectNode) node).put("additionalProperties", false);
    }
    node.forEach(ContractSchemas::close);
  }

  private static void open(JsonNode node) {
    if (node instanceof ObjectNode object && object.path("additionalProperties").isBoolean()) {
      object.remove("additionalProperties");
    }
    node.forEach(ContractSchemas::open);
  }

  private static JsonNode contract() {
    return read(Path.of("openapi/openapi.yaml"));
  }

  static JsonNode read(Path contract) {
    try {
      return new YAMLMapper().readTree(contract.toFile());
    } catch (IOException unreadable) {
      throw new IllegalStateException(unreadable);
    }
  }
}
