package easewright.contract;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The contract as written, and as JSON with its examples inlined for tools that don't fetch them.
 */
public final class Contract {
  private static final String FOLDER = "openapi/";
  private static final JsonNode TREE = read();

  private Contract() {}

  /** The file itself. */
  public static String yaml() {
    return BundledText.text(FOLDER + "openapi.yaml");
  }

  /**
   * The copy in OpenAPI 3.0 that the build derives, made fit for generators of clients.
   *
   * @param form "yaml" or "json"
   */
  public static String older(String form) {
    return ForGenerators.of(BundledText.text(FOLDER + "openapi-3.0.json"), form);
  }

  /** The contract with every example inlined. */
  public static JsonNode withExamples() {
    JsonNode contract = TREE.deepCopy();
    putExamples(contract);
    return contract;
  }

  /** An example by its file name. */
  public static Optional<String> example(String name) {
    return name.matches("[a-z0-9-]+((\\.answer)?\\.(json|ndjson)|\\.yaml)")
        ? BundledText.find(FOLDER + "examples/" + name)
        : Optional.empty();
  }

  /** The methods of a path in the contract, such as "GET"; empty if there are none. */
  public static List<String> methods(String path) {
    List<String> methods = new ArrayList<>();
    for (JsonNode operations : operations(path)) {
      operations.properties().stream()
          .filter(one -> one.getValue().has("operationId")) // other entries apply to every method
          .forEach(one -> methods.add(one.getKey().toUpperCase(Locale.ROOT)));
    }
    return methods;
  }

  /** The media types a path accepts, such as "application/json". */
  public static List<String> forms(String path) {
    Set<String> forms = new LinkedHashSet<>();
    for (JsonNode operations : operations(path)) {
      for (JsonNode operation : operations) {
        operation.at("/requestBody/content").fieldNames().forEachRemaining(forms::add);
      }
    }
    return List.copyOf(forms);
  }

  /** The contract as a JSON tree. */
  public static JsonNode tree() {
    return TREE;
  }

  private static List<JsonNode> operations(String path) {
    if (TREE.path("paths").has(path)) {
      return List.of(TREE.path("paths").path(path));
    }
    List<JsonNode> found = new ArrayList<>();
    for (Map.Entry<String, JsonNode> entry : TREE.path("paths").properties()) {
      if (path.matches(entry.getKey().replace(".", "\\.").replaceAll("\\{\\w+}", "[^/]+"))) {
        found.add(entry.getValue());
      }
    }
    return found;
  }

  private static JsonNode read() {
    try {
      return new YAMLMapper().readTree(yaml());
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("The contract is not YAML.", broken);
    }
  }

  private static JsonNode json(String text) {
    try {
      return new JsonMapper().readTree(text);
    } catch (JsonProcessingException broken) {
      throw new IllegalStateException("An example of the contract is not JSON.", broken);
    }
  }

  private static void putExamples(JsonNode node) {
    for (JsonNode child : node) {
      JsonNode file = child.path("externalValue");
      Optional<String> example =
          file.isTextual() ? example(file.textValue().replace("examples/", "")) : Optional.empty();
      if (example.isPresent()) {
        ((ObjectNode) child).remove("externalValue");
        // A sheet in YAML and a bulk request are text examples.
        ((ObjectNode) child)
            .set(
                "value",
                file.textValue().endsWith(".json")
                    ? json(example.get())
                    : TextNode.valueOf(example.get()));
      } else {
        putExamples(child);
      }
    }
  }
}
