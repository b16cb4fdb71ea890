package easewright.mcp;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.Answer.QuestionNote;
import easewright.request.FaultyRequest;
import easewright.request.IntakeAnswer;
import easewright.request.RequestJson;
import easewright.saying.BadParameter;
import easewright.saying.Problem;
import io.quarkiverse.mcp.server.RawMessage;
import io.quarkiverse.mcp.server.TextContent;
import io.quarkiverse.mcp.server.ToolResponse;
import io.quarkus.logging.Log;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.json.Json;
import io.vertx.core.json.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;

/**
 * The result of a tool: Markdown to post, and the endpoint's JSON as structured content. A rejected
 * request is a tool error rather than a protocol error, so that the assistant can correct it (MCP
 * 2025-11-25, server/tools, "Error Handling").
 */
final class ToolReply {
  private ToolReply() {}

  @CheckedTemplate(basePath = "mcp")
  static final class Pages {
    private Pages() {}

    /** Markdown: {@code refusal.md}. */
    static native TemplateInstance refusal(Problem problem);

    /** Markdown: {@code turn.md}; without a question where there is none. */
    static native TemplateInstance turn(String reply, QuestionNote question, String soFar);

    /** Markdown: {@code reading.md}. */
    static native TemplateInstance reading(IntakeAnswer read);
  }

  static <A> ToolResponse to(
      RawMessage message, Function<JsonNode, A> answer, Function<A, String> page) {
    return to(message, answer, page, answered -> answered);
  }

  static <A> ToolResponse to(
      RawMessage message,
      Function<JsonNode, A> answer,
      Function<A, String> page,
      Function<A, Object> json) {
    try {
      A answered = answer.apply(arguments(message));
      return reply(false, page.apply(answered), json.apply(answered));
    } catch (RuntimeException refusal) {
      if (!(refusal instanceof FaultyRequest
          || refusal instanceof RequestJson.TooLarge
          || refusal instanceof BadParameter)) {
        Log.error("A tool failed", refusal);
      }
      Problem problem = Problem.of(refusal);
      return reply(true, Pages.refusal(problem).render(), problem);
    }
  }

  private static JsonNode arguments(RawMessage message) {
    Object arguments =
        message.asJsonObject().getJsonObject("params").getValue("arguments", new JsonObject());
    return RequestJson.parse(Json.encode(arguments).getBytes(StandardCharsets.UTF_8));
  }

  private static ToolResponse reply(boolean isError, String page, Object json) {
    return new ToolResponse(isError, List.of(new TextContent(page.strip())), json, null);
  }
}
