package easewright.mcp;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import easewright.EveryShape;
import easewright.http.Examples;
import easewright.http.Examples.Example;
import io.modelcontextprotocol.client.McpSyncClient;
import io.modelcontextprotocol.spec.McpError;
import io.modelcontextprotocol.spec.McpSchema.CallToolRequest;
import io.modelcontextprotocol.spec.McpSchema.CallToolResult;
import io.modelcontextprotocol.spec.McpSchema.CompleteRequest;
import io.modelcontextprotocol.spec.McpSchema.CompleteRequest.CompleteArgument;
import io.modelcontextprotocol.spec.McpSchema.InitializeResult;
import io.modelcontextprotocol.spec.McpSchema.JsonSchema;
import io.modelcontextprotocol.spec.McpSchema.ReadResourceRequest;
import io.modelcontextprotocol.spec.McpSchema.ResourceReference;
import io.modelcontextprotocol.spec.McpSchema.TextContent;
import io.modelcontextprotocol.spec.McpSchema.TextResourceContents;
import io.modelcontextprotocol.spec.McpSchema.Tool;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The protocol's own Java client talks to the service through the Model Context Protocol, revision
 * 2025-11-25; sections named below are from that specification. A tool's answer is compared with
 * its endpoint's, which {@code ContractTest} checks against the contract.
 */
@QuarkusTest
class AssistantTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TestHTTPResource("/")
  URI service;

  private McpSyncClient client;
  private InitializeResult greeting;

  @BeforeEach
  void connect() {
    client = Tools.client(service);
    greeting = client.initialize();
  }

  @AfterEach
  void leave() {
    client.closeGracefully();
  }

  static List<Example> examples() {
    return Examples.all().stream()
        .filter(example -> Tools.BY_PATH.containsKey(example.path()))
        .toList();
  }

  /** Basic/lifecycle, "Initialization". */
  @Test
  void a_client_is_greeted_in_the_revision_it_speaks() {
    assertEquals("2025-11-25", greeting.protocolVersion());
    assertEquals("easewright", greeting.serverInfo().name());
    assertTrue(greeting.capabilities().tools() != null, "tools");
    assertTrue(greeting.capabilities().resources() != null, "resources");
  }

  /** Server/tools, "Tool" and "Tool Names"; a tool that changes nothing is marked as read-only. */
  @Test
  void every_operation_that_answers_a_question_is_a_tool() {
    List<Tool> tools = client.listTools().tools();
    assertEquals(
        Set.copyOf(Tools.BY_PATH.values()),
        tools.stream().map(Tool::name).collect(Collectors.toSet()));
    for (Tool tool : tools) {
      assertTrue(tool.name().matches("[A-Za-z0-9_.-]{1,128}"), tool.name());
      assertFalse(tool.description().isBlank(), tool.name());
      assertEquals("object", tool.inputSchema().type());
      assertTrue(tool.annotations().readOnlyHint(), tool.name());
    }
  }

  /** Server/tools: an input schema is one of JSON Schema 2020-12; a general validator runs it. */
  @ParameterizedTest
  @MethodSource("examples")
  void the_schema_of_a_tool_takes_the_examples_of_the_contract(Example example) throws IOException {
    Schema schema = schemaOf(Tools.BY_PATH.get(example.path()));
    assertEquals(List.of(), schema.validate(JSON.readTree(example.request())));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"units\": \"feet\"}",
        "{\"signs\": {}}",
        "{\"length\": \"endless\", \"text\": \"The straps slip off.\"}",
        "{\"unheard\": 1}"
      })
  void the_schema_of_a_tool_refuses_what_the_service_cannot_read(String request)
      throws IOException {
    assertFalse(schemaOf("answer_fitting").validate(JSON.readTree(request)).isEmpty());
    assertTrue(call("answer_fitting", JSON.readTree(request)).isError());
  }

  private Schema schemaOf(String name) {
    JsonSchema schema =
        client.listTools().tools().stream()
            .filter(tool -> tool.name().equals(name))
            .findFirst()
            .orElseThrow()
            .inputSchema();
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(JSON.<JsonNode>valueToTree(schema));
  }

  /** Server/tools, "Structured Content". */
  @ParameterizedTest
  @MethodSource("examples")
  void a_tool_answers_as_its_endpoint_does(Example example) throws IOException {
    CallToolResult result =
        call(Tools.BY_PATH.get(example.path()), JSON.readTree(example.request()));
    assertEquals(example.status() != 200, result.isError());
    assertEquals(
        JSON.readTree(post(example, "application/json").asByteArray()),
        JSON.valueToTree(result.structuredContent()));
    if (example.answerForms().contains("text/markdown")) {
      String post =
          new String(post(example, "text/markdown").asByteArray(), StandardCharsets.UTF_8).strip();
      assertEquals(post, text(result).substring(0, Math.min(post.length(), text(result).length())));
    }
  }

  /** Ranges, places, times, areas, trials, toiles, edges, design, size system, held tapes. */
  @Test
  void every_shape_of_a_fitting_is_taken_and_said_back() throws IOException {
    JsonNode request = EveryShape.request();
    assertEquals(List.of(), schemaOf("answer_fitting").validate(request));
    CallToolResult result =
        call("answer_fitting", ((ObjectNode) request.deepCopy()).put("length", "long"));
    assertFalse(result.isError(), () -> text(result));
    EveryShape.assertSaidIn(text(result));
    JsonNode answer = JSON.valueToTree(result.structuredContent());
    assertEquals(request.path("garment"), answer.at("/soFar/garment"));
  }

  /** The endpoint has no Markdown to compare this with. */
  @Test
  void a_reading_is_returned_with_its_words_and_as_a_request_to_continue_from() throws IOException {
    String text = "The band rides up at the back, and the **shoulder seams** do a strange thing.";
    CallToolResult result = call("read_post", JSON.createObjectNode().put("text", text));
    JsonNode read = JSON.valueToTree(result.structuredContent());
    assertEquals("fit-question", read.path("kind").textValue());
    for (JsonNode span : read.path("spans")) {
      String told = span.path("pointer").textValue() + ": \"" + span.path("text").textValue();
      assertTrue(text(result).contains(told), text(result));
    }
    for (JsonNode note : read.path("notUnderstood")) {
      String told = note.path("text").textValue().replace("*", "\\*");
      assertTrue(text(result).contains("Not understood: \"" + told), text(result));
    }
    String request = text(result).lines().reduce((first, last) -> last).orElseThrow();
    assertEquals(read.path("fitting"), JSON.readTree(request));
    assertFalse(call("answer_fitting", JSON.readTree(request)).isError());
  }

  private static Response post(Example example, String accept) throws IOException {
    return given()
        .contentType(example.form())
        .accept(accept)
        .body(example.request().getBytes(StandardCharsets.UTF_8))
        .post(example.path() + (example.path().equals("/v1/fittings") ? "?length=short" : ""));
  }

  /**
   * Server/tools, "Error Handling": input errors are tool errors, so that a model can correct them.
   */
  @Test
  void a_faulty_request_is_a_tool_error_with_pointer_and_remedy() throws IOException {
    CallToolResult result =
        call(
            "answer_fitting",
            JSON.readTree(
                "{\"body\": {\"bust\": 94, \"underbust\": null},"
                    + " \"signs\": [{\"sign\": \"band-rides-up\"}]}"));
    assertTrue(result.isError());
    JsonNode problem = JSON.valueToTree(result.structuredContent());
    assertEquals(400, problem.path("status").intValue());
    List<String> pointers = problem.path("faults").findValuesAsText("pointer");
    assertTrue(pointers.containsAll(List.of("/body/bust", "/signs/0/sign")), pointers::toString);
    for (String pointer : pointers) {
      assertTrue(text(result).contains("At " + pointer + ":"), text(result));
    }
    assertTrue(text(result).contains("band-rides-up-at-the-back"), text(result));
    assertFalse(text(result).contains("Exception"), text(result));
  }

  @Test
  void no_arguments_at_all_are_nothing_to_go_on() throws IOException {
    CallToolResult result = call("answer_fitting", JSON.createObjectNode());
    assertTrue(result.isError());
    assertTrue(text(result).contains("at least one sign"), text(result));
  }

  @Test
  void arguments_too_long_or_too_deep_are_refused_as_the_endpoint_refuses_them()
      throws IOException {
    CallToolResult large =
        call("answer_fitting", JSON.createObjectNode().put("units", "x".repeat(32 * 1024)));
    assertTrue(large.isError());
    assertTrue(text(large).contains("texts under 4000"), text(large));
    CallToolResult deep =
        call("check_size", JSON.readTree("{\"body\": " + "[".repeat(20) + "]".repeat(20) + "}"));
    assertTrue(deep.isError());
    assertTrue(text(deep).contains("20 deep"), text(deep));
  }

  /** Server/tools, "Error Handling": an unknown tool is a protocol error, -32602. */
  @Test
  void a_tool_that_is_not_there_is_an_error_of_the_protocol() {
    McpError error =
        assertThrows(McpError.class, () -> call("measure_the_moon", JSON.createObjectNode()));
    assertEquals(-32602, error.getJsonRpcError().code());
  }

  /** Server/resources. The book is the folder {@code rules}, read here file by file. */
  @Test
  void every_page_of_the_rule_book_is_listed_and_can_be_read() throws IOException {
    assertEquals("easewright://rules", client.listResources().resources().get(0).uri());
    assertEquals(
        "easewright://rules/{id}",
        client.listResourceTemplates().resourceTemplates().get(0).uriTemplate());
    String list = read("easewright://rules").text();
    for (Map.Entry<String, String> page : pages().entrySet()) {
      String uri = "easewright://rules/" + page.getKey();
      assertTrue(list.contains("(" + uri + ")"), uri);
    }
    TextResourceContents page = read("easewright://rules/band-too-long");
    assertEquals("text/markdown", page.mimeType());
    assertTrue(page.text().startsWith(pages().get("band-too-long").strip()), page.text());
    for (String rule :
        Files.readAllLines(Path.of("rules/sports-bra/band/band-too-long.dslr")).stream()
            .filter(line -> line.startsWith("rule "))
            .toList()) {
      String name = rule.substring(5).replace("\"", "").strip();
      assertTrue(page.text().contains("**" + name + "**"), name);
    }
  }

  @Test
  void every_sign_can_be_read_with_its_question() throws IOException {
    String list = read("easewright://signs").text();
    JsonNode signs = JSON.readTree(given().get("/v1/signs").asByteArray());
    assertTrue(signs.size() > 30);
    for (JsonNode sign : signs) {
      assertTrue(
          list.contains(
              "`%s`: **%s.** %s\n"
                  .formatted(
                      sign.path("id").textValue(),
                      sign.path("name").textValue(),
                      sign.path("ask").textValue())),
          sign::toString);
    }
  }

  private static Map<String, String> pages() throws IOException {
    Map<String, String> pages = new HashMap<>();
    for (String folder : List.of("rules/common", "rules/sports-bra")) {
      try (var files = Files.walk(Path.of(folder))) {
        for (Path file : files.filter(file -> file.toString().endsWith(".md")).toList()) {
          pages.put(file.getFileName().toString().replace(".md", ""), Files.readString(file));
        }
      }
    }
    return pages;
  }

  /** Server/resources, "Error Handling": -32002. */
  @Test
  void a_page_that_is_not_there_is_not_found() {
    McpError error = assertThrows(McpError.class, () -> read("easewright://rules/no-such-rule"));
    assertEquals(-32002, error.getJsonRpcError().code());
  }

  /** Server/utilities/completion. */
  @Test
  void the_name_of_a_page_is_completed() {
    assertEquals(
        List.of("straps-too-long"),
        client
            .completeCompletion(
                new CompleteRequest(
                    new ResourceReference("ref/resource", "easewright://rules/{id}"),
                    new CompleteArgument("id", "straps-too-l")))
            .completion()
            .values());
  }

  private TextResourceContents read(String uri) {
    return (TextResourceContents)
        client.readResource(new ReadResourceRequest(uri)).contents().get(0);
  }

  @SuppressWarnings("unchecked")
  private CallToolResult call(String tool, JsonNode arguments) {
    return client.callTool(
        new CallToolRequest(tool, (Map<String, Object>) JSON.convertValue(arguments, Map.class)));
  }

  private static String text(CallToolResult result) {
    assertEquals(1, result.content().size());
    return ((TextContent) result.content().get(0)).text();
  }
}
