package easewright.mcp;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.contract.RequestSchema;
import io.quarkiverse.mcp.server.InputSchemaGenerator;
import io.quarkiverse.mcp.server.ToolManager.ToolInfo;
import jakarta.inject.Singleton;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * What a tool takes is what the contract says its operation takes. Worked out when tools are first
 * listed, since reading the contract would delay the start.
 */
@Singleton
public class ContractSchema implements InputSchemaGenerator<JsonNode> {
  private static final Pattern NEXT_WORD = Pattern.compile("_([a-z])");

  private final Map<String, JsonNode> schemas = new ConcurrentHashMap<>();

  @Override
  public JsonNode generate(ToolInfo tool) {
    return schemas.computeIfAbsent(
        tool.name(),
        name ->
            RequestSchema.of(
                NEXT_WORD.matcher(name).replaceAll(word -> word.group(1).toUpperCase())));
  }
}
