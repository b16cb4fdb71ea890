package easewright.contract;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * The contract arranged for readers: operations by tag, then the schemas of requests and responses.
 * Descriptions are CommonMark (OpenAPI Specification 3.1, section 4.6), here rendered as HTML.
 *
 * @param about what applies to the whole contract
 */
public record ContractPage(String about, String version, List<Group> groups, List<Form> forms) {
  private static final Set<String> METHODS = Set.of("get", "post", "put", "delete");
  private static final Parser PARSER = Parser.builder().build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder().escapeHtml(true).sanitizeUrls(true).build();

  /** A tag and its operations. */
  public record Group(String name, String about, List<Operation> operations) {}

  /**
   * One operation.
   *
   * @param about HTML
   * @param takes the possible request bodies; empty without one
   * @param example a body to try it with; null if none is JSON
   */
  public record Operation(
      String id,
      String method,
      String path,
      String summary,
      String about,
      boolean needsKey,
      List<Field> parameters,
      List<Body> takes,
      Example example,
      List<Response> responses) {}

  /** A body by media type, its types, and its examples. */
  public record Body(String mediaType, List<Type> types, List<Example> examples) {}

  /** An example's file, what it shows, and its text if short. */
  public record Example(String name, String summary, String text) {}

  /** The response for a status. */
  public record Response(String status, String about, List<Body> bodies) {}

  /** A parameter, or a field of a schema; nested fields have dotted names. */
  public record Field(
      String name, String place, boolean required, List<Type> types, String about) {}

  /** A type in words, and the schema it refers to, if any. */
  public record Type(String words, String form) {}

  /** A schema of requests or responses. */
  public record Form(String name, String about, List<Type> types, List<Field> fields) {}

  /** The page of a contract. */
  public static ContractPage of(JsonNode contract) {
    List<Group> groups = new ArrayList<>();
    for (JsonNode tag : contract.path("tags")) {
      groups.add(new Group(text(tag, "name"), text(tag, "description"), operations(contract, tag)));
    }
    List<Form> forms = new ArrayList<>();
    for (Map.Entry<String, JsonNode> form : contract.at("/components/schemas").properties()) {
      JsonNode schema = form.getValue();
      forms.add(
          new Form(
              form.getKey(), html(text(schema, "description")), types(schema), fields(schema, "")));
    }
    JsonNode info = contract.path("info");
    return new ContractPage(html(text(info, "description")), text(info, "version"), groups, forms);
  }

  private static List<Operation> operations(JsonNode contract, JsonNode tag) {
    List<Operation> operations = new ArrayList<>();
    for (Map.Entry<String, JsonNode> path : contract.path("paths").properties()) {
      for (Map.Entry<String, JsonNode> one : path.getValue().properties()) {
        JsonNode operation = one.getValue();
        if (METHODS.contains(one.getKey())
            && operation.at("/tags/0").asText().equals(text(tag, "name"))) {
          List<Field> parameters = new ArrayList<>();
          for (JsonNode list : List.of(path.getValue(), operation)) {
            list.path("parameters").forEach(each -> parameters.add(parameter(contract, each)));
          }
          String method = one.getKey().toUpperCase(Locale.ROOT);
          operations.add(operation(contract, method, path.getKey(), operation, parameters));
        }
      }
    }
    return operations;
  }

  private static Operation operation(
      JsonNode contract, String method, String path, JsonNode operation, List<Field> parameters) {
    List<Body> takes = bodies(operation.path("requestBody"));
    List<Response> responses = new ArrayList<>();
    for (Map.Entry<String, JsonNode> one : operation.path("responses").properties()) {
      JsonNode response = resolved(contract, one.getValue());
      responses.add(
          new Response(one.getKey(), html(text(response, "description")), bodies(response)));
    }
    return new Operation(
        text(operation, "operationId"),
        method,
        path,
        text(operation, "summary"),
        html(text(operation, "description")),
        operation.path("security").size() > 0,
        parameters,
        takes,
        takes.stream()
            .flatMap(body -> body.examples().stream())
            .filter(example -> example.text() != null)
            .findFirst()
            .orElse(null),
        responses);
  }

  private static Field parameter(JsonNode contract, JsonNode written) {
    JsonNode one = resolved(contract, written);
    return new Field(
        text(one, "name"),
        text(one, "in"),
        one.path("required").asBoolean(),
        types(one.path("schema")),
        html(text(one, "description")));
  }

  private static List<Body> bodies(JsonNode holder) {
    List<Body> bodies = new ArrayList<>();
    for (Map.Entry<String, JsonNode> one : holder.path("content").properties()) {
      List<Example> examples = new ArrayList<>();
      for (JsonNode example : one.getValue().path("examples")) {
        String file = text(example, "externalValue").replace("examples/", "");
        boolean sent = file.endsWith(".json") && !file.endsWith(".answer.json");
        examples.add(
            new Example(
                file, text(example, "summary"), sent ? Contract.example(file).orElse(null) : null));
      }
      bodies.add(new Body(one.getKey(), types(one.getValue().path("schema")), examples));
    }
    return bodies;
  }

  private static List<Field> fields(JsonNode schema, String within) {
    List<Field> fields = new ArrayList<>();
    List<String> required = new ArrayList<>();
    schema.path("required").forEach(name -> required.add(name.asText()));
    for (Map.Entry<String, JsonNode> one : schema.path("properties").properties()) {
      JsonNode field = one.getValue();
      String name = within + one.getKey();
      fields.add(
          new Field(
              name,
              "",
              required.contains(one.getKey()),
              types(field),
              html(text(field, "description"))));
      fields.addAll(fields(field, name + "."));
      fields.addAll(fields(field.path("items"), name + "[]."));
    }
    return fields;
  }

  private static List<Type> types(JsonNode schema) {
    if (schema.has("$ref")) {
      String reference = schema.path("$ref").asText();
      String form = reference.substring(reference.lastIndexOf('/') + 1);
      return List.of(new Type(form, form));
    }
    if (schema.has("items")) {
      List<Type> list = new ArrayList<>(List.of(new Type("list of", null)));
      list.addAll(types(schema.path("items")));
      return list;
    }
    for (String choice : List.of("oneOf", "anyOf")) {
      if (schema.has(choice) && !schema.has("properties")) {
        List<Type> either = new ArrayList<>();
        for (JsonNode one : schema.path(choice)) {
          either.add(new Type(either.isEmpty() ? "either" : "or", null));
          either.addAll(types(one));
        }
        return either;
      }
    }
    if (schema.has("enum")) {
      List<String> words = new ArrayList<>();
      schema.path("enum").forEach(word -> words.add(word.asText()));
      return List.of(new Type(String.join(", ", words), null));
    }
    JsonNode type = schema.path("type");
    return type.isTextual() ? List.of(new Type(type.textValue(), null)) : List.of();
  }

  private static JsonNode resolved(JsonNode contract, JsonNode one) {
    return one.has("$ref") ? contract.at(one.path("$ref").asText().substring(1)) : one;
  }

  private static String text(JsonNode node, String name) {
    return node.path(name).asText("");
  }

  private static String html(String markdown) {
    return RENDERER.render(PARSER.parse(markdown));
  }
}
