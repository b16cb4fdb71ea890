package easewright.http;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** A sheet that was sent along once is named by what an answer gives to go on from. */
@QuarkusTest
class SentSheetTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path SHEETS = Path.of("src/main/resources/easewright/patterns");
  private static final int MOST_BYTES = 5 * 1024;

  @Test
  void the_next_request_names_the_sheet_and_gets_the_same_answer() throws IOException {
    ObjectNode request = request("quillmere-top");
    JsonNode lean = answered(request, "");
    assertTrue(lean.toString().length() < MOST_BYTES, () -> lean.toString().length() + " bytes");
    assertTrue(lean.at("/soFar/pattern/sent").asText().startsWith("sha256:"), lean::toString);
    assertFalse(lean.at("/soFar/pattern").has("inline"));

    ObjectNode next = (ObjectNode) lean.path("soFar");
    assertEquals(lean, answered(next, ""));
    JsonNode full = answered(next, "?detail=full");
    assertEquals(request.at("/pattern/inline"), full.at("/soFar/pattern/inline"));
    assertEquals("80C", full.at("/understood/sizeCut").textValue());
  }

  @Test
  void a_size_check_and_a_cut_plan_know_the_sheet_too() throws IOException {
    JsonNode sent = answered(request("ossenby-pull-on"), "").at("/soFar/pattern");
    ObjectNode asked = JSON.createObjectNode();
    asked.set("pattern", sent);
    asked.putObject("body").put("bust", "94 cm").put("underbust", "77 cm");
    assertEquals(200, post("/v1/size-checks", asked).statusCode());
  }

  /** As after a restart, or at another instance. */
  @Test
  void a_sheet_that_is_not_kept_is_asked_for_once_more() throws IOException {
    ObjectNode request = request("quillmere-top");
    ((ObjectNode) request.path("pattern")).removeAll().put("sent", "sha256:" + "0".repeat(64));
    Response refusal = post("/v1/fittings", request);
    assertEquals(422, refusal.statusCode());
    assertEquals("/pattern/sent", refusal.path("faults[0].pointer"));
    assertTrue(refusal.<String>path("faults[0].remedy").contains("inline"));
  }

  @Test
  void a_sheet_is_named_in_one_way_only() throws IOException {
    ObjectNode request = request("quillmere-top");
    JsonNode sent = answered(request, "").at("/soFar/pattern/sent");
    ((ObjectNode) request.path("pattern")).set("sent", sent);
    assertEquals(400, post("/v1/fittings", request).statusCode());
    ((ObjectNode) request.path("pattern")).remove("inline");
    assertEquals(200, post("/v1/fittings", request).statusCode());
    ((ObjectNode) request.path("pattern")).put("sheet", "ossenby-pull-on");
    assertEquals(400, post("/v1/fittings", request).statusCode());
  }

  /** Whoever sends many large sheets fills no memory: the oldest go. */
  @Test
  void only_the_latest_sheets_are_kept() throws IOException {
    JsonNode first = answered(request("quillmere-top"), "").path("soFar");
    String filler = "x".repeat(200);
    for (int i = 0; i < 150; i++) {
      ObjectNode other = request("quillmere-top");
      ((ObjectNode) other.at("/pattern/inline")).put("name", "Sheet " + i).put("summary", filler);
      answered(other, "");
    }
    assertEquals(422, post("/v1/fittings", first).statusCode());
  }

  /** The shipped sheet's text, under an id of its own. */
  private static ObjectNode request(String sheet) throws IOException {
    ObjectNode own =
        (ObjectNode) new YAMLMapper().readTree(SHEETS.resolve(sheet + ".yaml").toFile());
    ObjectNode request = JSON.createObjectNode();
    request.putObject("pattern").set("inline", own.put("id", "our-" + sheet));
    if (sheet.startsWith("quillmere")) {
      request.put("sizeCut", "80C");
    }
    request.putArray("signs").addObject().put("sign", "band-rides-up-at-the-back");
    return request;
  }

  private static JsonNode answered(JsonNode request, String query) throws IOException {
    Response response = post("/v1/fittings" + query, request);
    assertEquals(200, response.statusCode(), response::asString);
    return JSON.readTree(response.asByteArray());
  }

  private static Response post(String path, JsonNode request) {
    return given().contentType("application/json").body(request.toString()).post(path);
  }
}
