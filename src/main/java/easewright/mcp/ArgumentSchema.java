package easewright.mcp;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.answering.CutPlanService;
import easewright.contract.RequestSchema;
import io.quarkiverse.mcp.server.InputSchemaGenerator;
import io.quarkiverse.mcp.server.ToolManager.ToolInfo;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Input schema of a tool: the properties of its operation's request in the contract, each with its
 * type and a line from {@code words.yaml}. What stands deeper is left out, since a model pays for
 * every word of every tool before it asks anything; a wrong argument is answered with its remedy.
 * Generated when tools are first listed, since reading the contract would delay start-up.
 */
@Singleton
public class ArgumentSchema implements InputSchemaGenerator<JsonNode> {
  private static final Pattern NEXT_WORD = Pattern.compile("_([a-z])");

  /** A model pays for each; a wrong id is answered with those like it. */
  private static final int MOST_NAMED = 20;

  private static final String WORDS = "/easewright/mcp/words.yaml";

  private final CutPlanService plans;
  private volatile Schemas schemas = new Schemas("", Map.of());

  /** The schemas by tool that name these sheets. */
  private record Schemas(String sheets, Map<String, JsonNode> byTool) {}

  ArgumentSchema(CutPlanService plans) {
    this.plans = plans;
  }

  @Override
  public JsonNode generate(ToolInfo tool) {
    String sheets = named(plans.sheets());
    Schemas known = schemas;
    if (!known.sheets().equals(sheets)) {
      known = new Schemas(sheets, new ConcurrentHashMap<>());
      schemas = known;
    }
    return known.byTool().computeIfAbsent(tool.name(), name -> schema(name, sheets));
  }

  private static String named(List<String> sheets) {
    String first = sheets.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
    return sheets.size() > MOST_NAMED ? first + ", …" : first;
  }

  private static ObjectNode schema(String tool, String sheets) {
    JsonNode request =
        RequestSchema.of(NEXT_WORD.matcher(tool).replaceAll(word -> word.group(1).toUpperCase()));
    JsonNode words = words();
    ObjectNode schema = JsonNodeFactory.instance.objectNode().put("type", "object");
    ObjectNode properties = schema.putObject("properties");
    for (Map.Entry<String, JsonNode> one : request.path("properties").properties()) {
      properties.set(
          one.getKey(), property(one.getKey(), resolved(one.getValue(), request), words, sheets));
    }
    if (tool.equals(Turn.TOOL)) {
      properties.set(Turn.SO_FAR, property(Turn.SO_FAR, object(), words, sheets));
      properties.set(Turn.LENGTH, property(Turn.LENGTH, Turn.lengths(), words, sheets));
    }
    for (String kept : List.of("required", "additionalProperties")) {
      if (request.has(kept)) {
        schema.set(kept, request.path(kept));
      }
    }
    return schema;
  }

  private static ObjectNode property(String name, JsonNode from, JsonNode words, String sheets) {
    ObjectNode property = JsonNodeFactory.instance.objectNode();
    for (String kept : List.of("type", "enum")) {
      if (from.has(kept)) {
        property.set(kept, from.path(kept));
      }
    }
    if (words.has(name)) {
      property.put("description", words.path(name).textValue().replace("{sheets}", sheets));
    }
    return property;
  }

  private static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode().put("type", "object");
  }

  private static JsonNode resolved(JsonNode property, JsonNode root) {
    return property.has("$ref")
        ? root.at(property.path("$ref").textValue().substring(1))
        : property;
  }

  private static JsonNode words() {
    try (InputStream in = ArgumentSchema.class.getResourceAsStream(WORDS)) {
      return new YAMLMapper().readTree(in);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
