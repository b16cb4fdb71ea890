package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.RuleBookService;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import easewright.diagnosis.Answer.CautionNote;
import easewright.pattern.PatternSheets;
import easewright.request.FaultyRequest;
import easewright.rulebook.RuleBook;
import io.modelcontextprotocol.client.McpClient;
import io.modelcontextprotocol.client.McpSyncClient;
import io.modelcontextprotocol.client.transport.HttpClientStreamableHttpTransport;
import io.modelcontextprotocol.spec.McpSchema.CallToolRequest;
import io.modelcontextprotocol.spec.McpSchema.CallToolResult;
import io.modelcontextprotocol.spec.McpSchema.TextContent;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The same as {@link NothingTighterTest} for other parts of the service that show or pass on
 * answers: with fewer fittings, since each goes over HTTP. For sources see there.
 */
@Tag("long")
@QuarkusTest
class NothingTighterOnPagesTest {
  private static final int FITTINGS = Math.min(150, NothingTighterTest.FITTINGS);

  @Inject RuleBookService rules;
  @Inject PatternSheets sheets;
  @Inject ObjectMapper json;

  @TestHTTPResource("/")
  URI service;

  private final List<String> wrong = new ArrayList<>();
  private final SmallerSizes smaller = new SmallerSizes();
  private TighterWords tighter;
  private List<ObjectNode> stopped;

  /** The client's own request, which an answer to an assistant gives back. */
  private static final Pattern SO_FAR = Pattern.compile("(?m)^ {4}\\{.*}$");

  @BeforeEach
  void draw() {
    RuleBook book = rules.edition().book();
    tighter = new TighterWords(book.catalog());
    stopped = new ArrayList<>();
    for (ObjectNode given :
        new StoppedFittings(
                book.catalog(), NothingTighterTest.shownByTheLoose(book), sheets.shipped())
            .some(FITTINGS * 2)) {
      given.remove("earlier"); // a page repeats the client's own words
      try {
        if (rules.edition().answer(given).nothingTighter() && stopped.size() < FITTINGS) {
          stopped.add(given);
        }
      } catch (FaultyRequest contradictory) {
        // Random words may contradict the rest.
      }
    }
    assertEquals(FITTINGS, stopped.size());
  }

  private void check(String where, ObjectNode given, String page) {
    Answer answer = rules.edition().answer(given);
    List<AdjustmentNote> slack =
        answer.adjustments().stream().filter(AdjustmentNote::slackOnly).toList();
    JsonNode named = given.at("/pattern/sheet");
    String text = said(page);
    List<String> found = new ArrayList<>(tighter.in(TighterWords.words(text), slack));
    smaller
        .in(
            text,
            given.has("pattern") ? sheets.find(named.asText("quillmere-top")).orElseThrow() : null,
            answer.understood().sizeCut())
        .ifPresent(found::add);
    found.forEach(one -> wrong.add(where + ": " + one));
    assertTrue(answer.cautions().stream().anyMatch(CautionNote::stopsTightening));
  }

  /** A page without markup, its drawing, the choices, and the client's own words. */
  private static String said(String page) {
    return page.replaceAll("(?s)<svg.*?</svg>", " ")
        .replaceAll("(?s)<p class=\"post\">.*?</p>", " ")
        .replaceAll("(?s)<(select|script|style|head)\\b.*?</\\1>", " ")
        .replaceAll("</?(span|strong|em|a|mark|sup)\\b[^>]*>", "")
        .replaceAll("<[^>]+>", "\n");
  }

  private void assertNothingWrong() {
    assertEquals(
        "", wrong.stream().limit(8).collect(Collectors.joining("\n")), wrong.size() + " in all");
  }

  @Test
  void the_desk_shows_nothing_tighter_or_smaller() {
    for (ObjectNode given : stopped) {
      ObjectNode told = given.deepCopy();
      String text = told.path("text").asText("");
      told.remove(List.of("text", "whyNot"));
      for (String length : List.of("short", "long")) {
        RequestSpecification form =
            given().contentType("application/x-www-form-urlencoded; charset=UTF-8");
        // The form's checkboxes count, not earlier reports.
        told.path("circumstances")
            .fields()
            .forEachRemaining(
                one -> {
                  boolean box = one.getValue().isBoolean();
                  form.formParam(
                      "/circumstances/" + one.getKey(), box ? "yes" : one.getValue().asText());
                });
        String page =
            form.header("Origin", service.toString().replaceAll("/$", ""))
                .formParam("soFar", told.toString())
                .formParam("text", text)
                .formParam("length", length)
                .post("/desk/answer")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(page.contains("The reply to copy"), page);
        check("desk, " + length, given, page);
      }
    }
    assertNothingWrong();
  }

  @Test
  void many_lines_at_once_are_answered_with_nothing_tighter_or_smaller() throws Exception {
    String lines = stopped.stream().map(JsonNode::toString).collect(Collectors.joining("\n"));
    String answers =
        given()
            .contentType(BulkRoute.FORM)
            .body(lines.getBytes(StandardCharsets.UTF_8))
            .post("/v1/fittings")
            .asString();
    List<String> each = answers.lines().toList();
    assertEquals(FITTINGS, each.size());
    for (int i = 0; i < FITTINGS; i++) {
      check("line", stopped.get(i), strings(json.readTree(each.get(i))));
    }
    assertNothingWrong();
  }

  @Test
  void an_assistant_gets_nothing_tighter_or_smaller() throws Exception {
    try (McpSyncClient client =
        McpClient.sync(
                HttpClientStreamableHttpTransport.builder(service.toString())
                    .endpoint("/mcp")
                    .build())
            .build()) {
      client.initialize();
      for (ObjectNode given : stopped) {
        CallToolResult result =
            client.callTool(
                new CallToolRequest("answer_fitting", json.convertValue(given, Map.class)));
        String text = ((TextContent) result.content().get(0)).text();
        check("MCP text", given, SO_FAR.matcher(text).replaceAll(""));
        check("MCP data", given, strings(json.valueToTree(result.structuredContent())));
      }
    }
    assertNothingWrong();
  }

  @Test
  void a_clinic_its_wearers_and_what_it_learns_show_nothing_tighter_or_smaller() {
    JsonPath opened =
        given()
            .contentType("application/json")
            .body("{\"name\": \"Thursday sewing circle\", \"organiser\": \"Odile\"}")
            .post("/v1/clinics")
            .jsonPath();
    String key = opened.getString("key.key");
    String clinic = opened.getString("clinic.id");
    for (ObjectNode given : stopped.subList(0, FITTINGS / 3)) {
      String cases = "/v1/clinics/" + clinic + "/cases";
      String id = keyed(key).body("{\"nickname\": \"Wrenna\"}").post(cases).path("id");
      keyed(key).body(given.toString()).post(cases + "/" + id + "/rounds").then().statusCode(201);
      int version = keyed(key).get(cases + "/" + id).path("case.version");
      String page = page("/desk/clinics/" + clinic + "/cases/" + id, key);
      check("case", given, page);
      keyed(key)
          .body("{\"version\": " + version + ", \"text\": \"We will look.\"}")
          .put(cases + "/" + id + "/rounds/1/reply")
          .then()
          .statusCode(200);
      String link = keyed(key).post(cases + "/" + id + "/wearer-link").path("key");
      check("wearer", given, page("/desk/wearer/" + link, key));
      for (String list : List.of("/queue", "/insight")) {
        String shown =
            page("/desk/clinics/" + clinic + (list.equals("/queue") ? "" : list), key)
                + strings(keyed(key).get("/v1/clinics/" + clinic + list).as(JsonNode.class));
        tighter.in(TighterWords.words(said(shown)), List.of()).forEach(wrong::add);
      }
    }
    assertNothingWrong();
  }

  private static RequestSpecification keyed(String key) {
    return given().contentType("application/json").header("Authorization", "Bearer " + key);
  }

  private static String page(String path, String key) {
    return given()
        .accept("text/html")
        .cookie("easewright-key", key)
        .get(path)
        .then()
        .statusCode(200)
        .extract()
        .asString();
  }

  /** Every text of an answer except those that repeat the client's own words. */
  private static String strings(JsonNode node) {
    if (node.isTextual()) {
      return node.textValue() + "\n";
    }
    StringBuilder all = new StringBuilder();
    if (node.isObject()) {
      node.fields()
          .forEachRemaining(
              field -> {
                if (!Set.of("soFar", "read", "sizeCut", "request").contains(field.getKey())) {
                  all.append(strings(field.getValue()));
                }
              });
    } else {
      node.forEach(child -> all.append(strings(child)));
    }
    return all.toString();
  }
}
