package easewright.rulebook.check;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.path.PathType;
import easewright.naming.NearestName;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The JSON Schemas of the book's YAML, and what they find wrong. */
final class BookSchemas {
  private static final String FOLDER = "/easewright/rulebook/schema/";

  private final SchemaRegistry registry =
      SchemaRegistry.withDefaultDialect(
          SpecificationVersion.DRAFT_2020_12,
          builder ->
              builder.schemaRegistryConfig(
                  SchemaRegistryConfig.builder()
                      .pathType(PathType.JSON_POINTER)
                      .locale(Locale.ENGLISH)
                      .build()));
  private final Map<String, Schema> schemas = new HashMap<>();

  private Schema schema(String name) {
    return schemas.computeIfAbsent(
        name,
        one -> {
          try (InputStream in =
              BookSchemas.class.getResourceAsStream(FOLDER + one + ".schema.json")) {
            return registry.getSchema(in);
          } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
          }
        });
  }

  /** Every place where a text has not the shape its schema asks for. */
  List<BookProblem> problems(String name, Written written) {
    Schema schema = schema(name);
    return schema.validate(written.tree()).stream()
        .filter(error -> !isOfAlternative(error))
        .map(error -> problem(error, schema, written))
        .toList();
  }

  /** An error within one alternative adds nothing to the error that no alternative is met. */
  private static boolean isOfAlternative(Error error) {
    return error.getSchemaLocation().getFragment().toString().matches(".*/oneOf/\\d+/.*");
  }

  private static BookProblem problem(Error error, Schema schema, Written written) {
    String pointer = error.getInstanceLocation().toString();
    String place = error.getSchemaLocation().getFragment().toString();
    String owner = place.substring(0, Math.max(0, place.lastIndexOf('/')));
    JsonNode about = schema.getSchemaNode().at(owner);
    String field = error.getProperty();
    String value = error.getInstanceNode() == null ? "" : error.getInstanceNode().asText();
    return switch (error.getKeyword()) {
      case "required" ->
          written.problem(
              pointer,
              "\"" + field + "\" is missing" + of(written, pointer) + ".",
              "Write it: " + about.path("properties").path(field).path("description").asText());
      case "additionalProperties" ->
          written.problem(
              pointer + "/" + field.replace("~", "~0").replace("/", "~1"),
              "\"" + field + "\" is no field of this place.",
              NearestName.remedy(field, names(about.path("properties"))));
      case "enum" ->
          written.problem(
              pointer,
              "\"" + value + "\" is not known here.",
              NearestName.remedy(value, texts(about.path("enum"))));
      case "pattern" ->
          written.problem(
              pointer,
              "\"" + value + "\" is not written as it should be.",
              about.path("description").asText());
      default ->
          written.problem(
              pointer, sentence(error.getMessage()), about.path("description").asText());
    };
  }

  /** The entry a place belongs to, where it has an id. */
  private static String of(Written written, String pointer) {
    JsonNode id = written.tree().at(pointer.replaceFirst("^(/\\d+).*", "$1")).path("id");
    return id.isTextual() ? " in " + id.textValue() : "";
  }

  private static List<String> names(JsonNode properties) {
    List<String> names = new ArrayList<>();
    properties.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static List<String> texts(JsonNode values) {
    List<String> texts = new ArrayList<>();
    values.forEach(value -> texts.add(value.asText()));
    return texts;
  }

  private static String sentence(String message) {
    String text = message.replaceFirst("^/?\\S*: ", "");
    return Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
  }
}
