package easewright.mcp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.knuddels.jtokkit.Encodings;
import com.knuddels.jtokkit.api.Encoding;
import com.knuddels.jtokkit.api.EncodingType;
import io.modelcontextprotocol.client.McpSyncClient;
import io.modelcontextprotocol.spec.McpSchema.CallToolRequest;
import io.modelcontextprotocol.spec.McpSchema.CallToolResult;
import io.modelcontextprotocol.spec.McpSchema.TextContent;
import io.modelcontextprotocol.spec.McpSchema.Tool;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What a model pays and sees, in tokens of the encoding o200k_base as the library JTokkit counts
 * them, and a conversation held with nothing but the text of each answer.
 */
@QuarkusTest
class ConversationTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Encoding TOKENS =
      Encodings.newLazyEncodingRegistry().getEncoding(EncodingType.O200K_BASE);
  private static final int MOST_TOKENS_OF_THE_TOOLS = 2500;
  private static final int MOST_TOKENS_OF_AN_ANSWER = 1200;
  private static final int TURNS = 10;

  /** What stands in an answer's text to go on from. */
  private static final Pattern ASKED = Pattern.compile("\\(sign `([a-z-]+)`\\)");

  private static final Pattern SO_FAR = Pattern.compile("(?m)^ {4}(\\{.*})$");

  @TestHTTPResource("/")
  URI service;

  private McpSyncClient client;

  @BeforeEach
  void connect() {
    client = Tools.client(service);
    client.initialize();
  }

  @AfterEach
  void leave() {
    client.closeGracefully();
  }

  @Test
  void the_tools_cost_a_model_little() throws JsonProcessingException {
    List<Tool> tools = client.listTools().tools();
    int tokens = TOKENS.countTokens(JSON.writeValueAsString(tools));
    assertTrue(tokens <= MOST_TOKENS_OF_THE_TOOLS, tokens + " tokens");
    assertTrue(
        JSON.writeValueAsString(tools).contains("quillmere-top"), "which patterns there are");
  }

  /** The band of this wearer is too long; she has no other sign, and says so each time. */
  @Test
  void ten_turns_can_be_held_by_their_texts_alone() throws JsonProcessingException {
    Set<String> hers = Set.of("band-pulls-off-the-body", "band-lifts-when-the-arms-go-up");
    ObjectNode arguments =
        JSON.createObjectNode()
            .put("text", "Hi, the back of my band climbs up while I walk. What should I do?");
    arguments.putObject("pattern").put("sheet", "quillmere-top");
    List<String> asked = new ArrayList<>();
    String text = "";
    for (int turn = 1; turn <= TURNS; turn++) {
      text = answer(arguments);
      int tokens = TOKENS.countTokens(text);
      assertTrue(tokens <= MOST_TOKENS_OF_AN_ANSWER, tokens + " tokens in turn " + turn);
      Matcher question = ASKED.matcher(text);
      if (!question.find()) {
        break; // it has nothing left to ask
      }
      assertFalse(asked.contains(question.group(1)), "asked again: " + question.group(1));
      asked.add(question.group(1));
      arguments = JSON.createObjectNode().put("asked", question.group(1));
      arguments.put("text", hers.contains(question.group(1)) ? "yes, it does" : "no");
      arguments.set("soFar", soFar(text));
    }
    assertTrue(asked.size() > TURNS / 2, asked::toString);
    JsonNode told = soFar(text);
    assertEquals("quillmere-top", told.at("/pattern/sheet").textValue());
    assertTrue(
        told.path("signs").findValuesAsText("sign").containsAll(asked.subList(0, asked.size() - 1)),
        told::toString);
    assertTrue(text.contains("band"), text);
  }

  /** A sign that is reported anew replaces the earlier report. */
  @Test
  void what_is_taken_back_no_longer_counts() throws JsonProcessingException {
    ObjectNode arguments = JSON.createObjectNode();
    arguments.putArray("signs").addObject().put("sign", "straps-slip-off");
    JsonNode before = soFar(answer(arguments));
    ObjectNode next = JSON.createObjectNode();
    next.set("soFar", before);
    next.putArray("signs").addObject().put("sign", "straps-slip-off").put("seen", "absent");
    JsonNode signs = soFar(answer(next)).path("signs");
    assertEquals(1, signs.size(), signs::toString);
    assertEquals("absent", signs.at("/0/seen").textValue());
    next.put("soFar", before.toString());
    assertEquals(signs, soFar(answer(next)).path("signs"), "written as a text");
    next.putArray("soFar").add(before);
    assertThrows(AssertionError.class, () -> answer(next), "a list is not passed over");
  }

  private static JsonNode soFar(String text) throws JsonProcessingException {
    Matcher found = SO_FAR.matcher(text);
    assertTrue(found.find(), text);
    return JSON.readTree(found.group(1));
  }

  @SuppressWarnings("unchecked")
  private String answer(JsonNode arguments) {
    CallToolResult result =
        client.callTool(
            new CallToolRequest(
                "answer_fitting", (Map<String, Object>) JSON.convertValue(arguments, Map.class)));
    String text = ((TextContent) result.content().get(0)).text();
    assertFalse(result.isError(), text);
    return text;
  }
}
