package easewright.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.path.PathType;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Validates sheets against the published JSON Schema. */
final class SheetSchema {

  private static final String RESOURCE = "/easewright/patterns/pattern-sheet.schema.json";

  private final Schema schema;

  SheetSchema() {
    SchemaRegistryConfig config =
        SchemaRegistryConfig.builder()
            .pathType(PathType.JSON_POINTER)
            .locale(Locale.ENGLISH)
            .build();
    SchemaRegistry registry =
        SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12, builder -> builder.schemaRegistryConfig(config));
    try (InputStream resource = SheetSchema.class.getResourceAsStream(RESOURCE)) {
      schema = registry.getSchema(resource);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** All structural faults of a sheet. */
  List<SheetFault> faults(JsonNode sheet) {
    return schema.validate(sheet).stream()
        .filter(error -> !isOfAlternative(error))
        .map(this::fault)
        .toList();
  }

  /**
   * An error within one alternative adds nothing to the error that none or two alternatives match.
   */
  private static boolean isOfAlternative(Error error) {
    return error.getSchemaLocation().getFragment().toString().matches(".*/oneOf/\\d+/.*");
  }

  private SheetFault fault(Error error) {
    String place = error.getSchemaLocation().getFragment().toString();
    String owner = place.substring(0, Math.max(0, place.lastIndexOf('/')));
    String problem =
        switch (error.getKeyword()) {
          case "required" -> "'" + error.getProperty() + "' is missing.";
          case "additionalProperties" -> "'" + error.getProperty() + "' is no key of this place.";
          case "oneOf" -> "It is to have one of two things here, and has neither or both.";
          case "pattern" -> error.getInstanceNode() + " is not written as it should be.";
          default -> sentence(error.getMessage());
        };
    String described =
        error.getKeyword().equals("required")
            ? owner + "/properties/" + error.getProperty()
            : owner;
    String pointer = error.getInstanceLocation().toString();
    if (error.getKeyword().equals("additionalProperties")) {
      return new SheetFault(
          pointer + "/" + SheetNode.token(error.getProperty()), problem, keys(owner));
    }
    String remedy = description(described);
    if (error.getKeyword().equals("type") && needsText(error.getMessage())) {
      remedy =
          "Write it in quotes, since YAML takes a bare number, true or yes for no text. " + remedy;
    }
    return new SheetFault(pointer, problem, remedy);
  }

  /** Whether a message of the library names text among what it expects: "x found, y expected". */
  private static boolean needsText(String message) {
    return message.substring(message.lastIndexOf(" found, ") + 1).contains("string");
  }

  private String keys(String place) {
    List<String> keys = new ArrayList<>();
    schema.getSchemaNode().at(place + "/properties").fieldNames().forEachRemaining(keys::add);
    return "Leave it out, or write one of the keys known here: " + String.join(", ", keys) + ".";
  }

  /** The schema's description of a location, used as the remedy. */
  private String description(String place) {
    JsonNode node = schema.getSchemaNode().at(place);
    if (!node.has("description") && node.has("$ref")) {
      node = schema.getSchemaNode().at(node.path("$ref").asText().substring(1));
    }
    return node.path("description").asText();
  }

  private static String sentence(String message) {
    // The validator's message starts with the location, which the pointer already gives.
    String text = message.replaceFirst("^/?\\S*: ", "");
    return Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
  }
}
