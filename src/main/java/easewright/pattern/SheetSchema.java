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
import java.util.List;
import java.util.Locale;

/** The published JSON Schema of a sheet, and what it finds wrong with one. */
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

  /** Every place where a sheet has not the shape of one. */
  List<SheetFault> faults(JsonNode sheet) {
    return schema.validate(sheet).stream().map(SheetSchema::fault).toList();
  }

  private static SheetFault fault(Error error) {
    String pointer = error.getInstanceLocation().toString();
    JsonNode described =
        error.getSchemaNode() == null ? null : error.getSchemaNode().path("description");
    return new SheetFault(
        pointer,
        sentence(error.getMessage()),
        described == null || described.isMissingNode()
            ? "Write it as the schema of a pattern sheet says."
            : described.asText());
  }

  private static String sentence(String message) {
    // The validator leads with the place, which the pointer already says.
    String text = message.replaceFirst("^/?\\S*: ", "");
    return text.endsWith(".") ? text : text + ".";
  }
}
