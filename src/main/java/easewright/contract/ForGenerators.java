package easewright.contract;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.util.List;

/**
 * The contract in OpenAPI 3.0 as generators of clients can digest it. It says less than the
 * contract itself, never anything else: each request it allows or describes may still be refused,
 * and each answer has its form.
 */
final class ForGenerators {
  private static final List<String> ALTERNATIVES = List.of("oneOf", "anyOf");

  private ForGenerators() {}

  /**
   * The looser copy.
   *
   * @param contract the contract in OpenAPI 3.0, JSON
   * @param form "yaml" or "json"
   */
  static String of(String contract, String form) {
    try {
      JsonNode tree = new JsonMapper().readTree(contract);
      loosen(tree);
      return form.equals("yaml")
          ? new YAMLMapper().writeValueAsString(tree)
          : new JsonMapper().writeValueAsString(tree);
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("The derived contract is not JSON.", broken);
    }
  }

  private static void loosen(JsonNode node) {
    if (node instanceof ObjectNode some) {
      loosen(some);
    }
    node.forEach(ForGenerators::loosen);
  }

  private static void loosen(ObjectNode some) {
    some.remove(
        ALTERNATIVES); // a text or an object, or a list of them, is no type in many languages
    // Clients send the defaults of what nobody filled in; some may not stand beside other fields.
    if (some.path("default").isValueNode()) {
      some.remove("default");
    }
    if (some.path("items").has("enum")) {
      some.remove("uniqueItems"); // sets of an enum do not compile in Java
    }
    if (some.path("type").asText().equals("object")
        && !some.has("properties")
        && !some.has("additionalProperties")) {
      some.put("additionalProperties", true); // else nothing of it is sent
    }
    if (some.has("properties") && some.path("additionalProperties").isObject()) {
      some.put("additionalProperties", true); // a type beside named fields makes a map of the class
    }
    if (some.path("examples").findParent("externalValue") != null) {
      some.remove("examples"); // files beside the contract, which a served copy does not have
    }
  }
}
