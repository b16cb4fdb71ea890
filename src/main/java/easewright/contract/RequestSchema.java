package easewright.contract;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * Request schema of an operation in the contract, as one self-contained JSON Schema (2020-12):
 * referenced schemas are placed under {@code $defs}.
 */
public final class RequestSchema {
  private static final String SCHEMAS = "#/components/schemas/";
  private static final String DEFS = "#/$defs/";

  private RequestSchema() {}

  /**
   * The schema of an operation's JSON request.
   *
   * @param operationId the operation's name in the contract
   */
  public static ObjectNode of(String operationId) {
    for (JsonNode path : Contract.tree().path("paths")) {
      if (path.path("post").path("operationId").asText().equals(operationId)) {
        return standAlone(
            path.at("/post/requestBody/content/application~1json/schema/$ref").textValue());
      }
    }
    throw new IllegalArgumentException("The contract has no operation " + operationId + ".");
  }

  private static ObjectNode standAlone(String ref) {
    ObjectNode root = schema(ref.substring(SCHEMAS.length()));
    ObjectNode defs = JsonNodeFactory.instance.objectNode();
    collect(root, defs);
    root.set("$defs", defs);
    return root;
  }

  private static ObjectNode schema(String name) {
    return Contract.tree().path("components").path("schemas").path(name).deepCopy();
  }

  private static void collect(JsonNode node, ObjectNode defs) {
    String ref = node.path("$ref").asText();
    if (ref.startsWith(SCHEMAS)) {
      String name = ref.substring(SCHEMAS.length());
      ((ObjectNode) node).put("$ref", DEFS + name);
      if (!defs.has(name)) {
        ObjectNode schema = schema(name);
        defs.set(name, schema);
        collect(schema, defs);
      }
    }
    node.forEach(child -> collect(child, defs));
  }
}
