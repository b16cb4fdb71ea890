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
 * Input schema of a tool: the request schema of its operation in the contract. Generated when tools
 * are first listed, since reading the contract would delay start-up.
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
