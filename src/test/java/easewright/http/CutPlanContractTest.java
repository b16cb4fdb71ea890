package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesRegex;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.contract.Contract;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Cut plans conform to their contract; problems have the members of RFC 9457 section 3.1. */
@QuarkusTest
class CutPlanContractTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String FULL = "/v1/cut-plans?detail=full";
  private final ContractSchemas schemas = new ContractSchemas();

  private static JsonNode shown(String name) throws IOException {
    return JSON.readTree(Contract.example(name + ".json").orElseThrow());
  }

  private static Response post(String body, String accept) {
    return given().contentType(ContentType.JSON).accept(accept).body(body).post("/v1/cut-plans");
  }

  private static JsonNode json(Response response) throws IOException {
    return JSON.readTree(response.asByteArray());
  }

  @Test
  void every_drawing_is_well_formed_and_names_every_piece_it_shows() throws Exception {
    String body = shown("cut-plan-whole").toString();
    JsonNode plan = json(given().contentType(ContentType.JSON).body(body).post(FULL));
    String page = post(body, "text/html").asString();
    List<String> drawings = new ArrayList<>();
    for (int from = page.indexOf("<svg"); from >= 0; from = page.indexOf("<svg", from + 1)) {
      drawings.add(page.substring(from, page.indexOf("</svg>", from) + 6));
    }
    assertEquals(plan.path("layouts").size(), drawings.size());
    for (int i = 0; i < drawings.size(); i++) {
      var svg =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new org.xml.sax.InputSource(new java.io.StringReader(drawings.get(i))));
      JsonNode pieces = plan.path("layouts").get(i).path("pieces");
      // The cloth and each of its pieces.
      assertEquals(1 + pieces.size(), svg.getElementsByTagName("rect").getLength());
      for (JsonNode piece : pieces) {
        assertTrue(drawings.get(i).contains(piece.path("name").textValue()));
      }
    }
  }

  @Test
  void an_adjustment_from_a_fittings_answer_can_be_sent_unchanged_in_a_plan() throws IOException {
    JsonNode fitting = shown("first-fitting");
    JsonNode answer = shown("first-fitting.answer");
    JsonNode advised = answer.path("adjustments").get(0);
    ObjectNode change = JSON.createObjectNode();
    change.set("adjustment", advised.path("id"));
    change.set("amount", advised.path("amount").path("text"));
    ArrayNode places = change.putArray("places");
    for (JsonNode place : advised.path("places")) {
      places
          .addObject()
          .put("piece", place.path("piece").textValue())
          .put("line", place.path("line").textValue())
          .put("each", place.path("each").path("text").textValue());
    }
    ObjectNode request = JSON.createObjectNode();
    request.set("pattern", fitting.path("pattern"));
    request.set("size", fitting.path("sizeCut"));
    if (fitting.has("choices")) {
      request.set("choices", fitting.path("choices"));
    }
    request.putArray("accepted").add(change);
    Response response = post(request.toString(), "application/json");
    assertEquals(200, response.statusCode(), response::asString);
    assertEquals(advised.path("places").size(), json(response).path("changes").size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | 400 | /pattern, /size",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75Z\"} | 400 | /size",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"sizes\": {\"upper\": \"75C\", \"lower\": \"75C\"}} | 400 | /size",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"sizes\": {\"upper\": \"75C\"}} | 400 | /sizes/lower",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"cloths\": {\"main\": {}}} | 400 | /cloths/main/width, /cloths/main/stretch",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"cloths\": {\"main\": {\"width\": 150, \"stretch\": \"up\"}}} | 400 | /cloths/main/width, /cloths/main/stretch",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"cloths\": {\"main\": {\"width\": \"wide\", \"stretch\": \"both\"}}} | 400 | /cloths/main/width",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"cloths\": {\"main\": {\"width\": \"15 cm\", \"stretch\": \"both\"}}} | 422 | /cloths/main/width",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"cloths\": {\"main\": {\"width\": \"150 cm\", \"stretch\": \"both\", \"shrinkage\": \"60 %\"}}} | 422 | /cloths/main/shrinkage",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"cloths\": {\"lining\": {\"cutFrom\": \"main\", \"width\": \"1 m\"}}} | 422 | /cloths/lining",
        "{\"pattern\": {\"sheet\": \"larkhythe-soft-top\"}, \"size\": \"75C\", \"cloths\": {\"support\": {\"width\": \"1 m\", \"stretch\": \"both\"}}} | 422 | /cloths/support",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"choices\": {\"back\": \"drawn-in\", \"closure\": \"hooks\"}} | 422 | /choices",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"accepted\": [{}]} | 400 | /accepted/0/adjustment",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"accepted\": [{\"adjustment\": \"take-in-the-band\", \"places\": [{\"piece\": \"Sleeve\", \"line\": \"hem\"}]}]} | 400 | /accepted/0/places/0/piece",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"accepted\": [{\"adjustment\": \"take-in-the-band\", \"places\": [{\"piece\": \"Underband\", \"line\": \"hem\"}]}]} | 400 | /accepted/0/places/0/line",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"accepted\": [{\"adjustment\": \"take-in-the-band\"}, {\"adjustment\": \"take-in-the-band\"}]} | 422 | /accepted/1",
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"size\": \"75C\", \"accepted\": [{\"adjustment\": \"shorten-the-front\", \"amount\": \"60 cm\"}]} | 422 | /accepted/0/amount"
      })
  void a_faulty_request_is_rejected_with_the_pointer_of_every_fault(
      String request, int status, String pointers) throws IOException {
    Response refusal = post(request, "application/json");
    assertEquals(status, refusal.statusCode(), refusal::asString);
    assertEquals("application/problem+json", refusal.contentType());
    schemas.assertValid("Problem", json(refusal));
    List<String> at = new ArrayList<>();
    json(refusal).path("faults").forEach(fault -> at.add(fault.path("pointer").textValue()));
    assertEquals(List.of(pointers.split(", ")), at, refusal::asString);
  }

  @Test
  void a_sheet_sent_along_may_bear_any_name_without_marking_up_the_page() throws IOException {
    ObjectNode sheet = (ObjectNode) json(given().get("/v1/pattern-sheets/quillmere-top"));
    sheet.put("name", "<b>*Top*</b>");
    ObjectNode request = (ObjectNode) shown("cut-plan-whole");
    request.putObject("pattern").set("inline", sheet);
    assertFalse(post(request.toString(), "text/html").asString().contains("<b>"));
    assertTrue(post(request.toString(), "text/markdown").asString().contains("\\*Top\\*"));
  }

  /** A plan of one change, or of another size, for a wearer whose fitting is sent with it. */
  private static ValidatableResponse planFor(String fitting, String size, String change)
      throws IOException {
    ObjectNode plan = (ObjectNode) shown("cut-plan-recut");
    plan.put("size", size);
    plan.putArray("accepted").addObject().put("adjustment", change).put("amount", "12 mm");
    plan.set("fitting", JSON.readTree(fitting));
    return post(plan.toString(), "application/json").then();
  }

  /**
   * Why: a tight bra contributes to blocked ducts (Mitchell et al. 2022, Breastfeed Med 17:360), a
   * tight band hinders breathing (Kipp et al. 2024, Med Sci Sports Exerc 56:1168).
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"circumstances\": {\"nursing\": true}}",
        "{\"signs\": [{\"sign\": \"breathless-or-dizzy\"}]}",
        "{\"text\": \"I am nursing my son and the band rides up.\"}"
      })
  void nothing_tighter_is_planned_for_a_fitting_that_forbids_it(String fitting) throws IOException {
    planFor(fitting, "75C", "shorten-the-band-elastic")
        .statusCode(422)
        .body("faults[0].pointer", equalTo("/accepted/0"));
    planFor(fitting, "75C", "let-out-the-band")
        .statusCode(200)
        .body("cautions[0]", matchesRegex("(?s).*(tighter|dizziness).*"));
  }

  @Test
  void no_smaller_size_is_planned_for_a_fitting_that_forbids_anything_tighter() throws IOException {
    String fitting =
        "{\"pattern\": {\"sheet\": \"quillmere-top\"}, \"sizeCut\": \"75C\","
            + " \"circumstances\": {\"nursing\": true}}";
    planFor(fitting, "70C", "let-out-the-band")
        .statusCode(422)
        .body("faults[0].pointer", equalTo("/size"));
    planFor(fitting, "75C", "let-out-the-band").statusCode(200);
    planFor(
            fitting.replace("{\"nursing\": true}", "{\"impact\": \"high\"}"),
            "70C",
            "shorten-the-band-elastic")
        .statusCode(200);
  }

  @Test
  void a_fault_of_the_fitting_has_its_own_pointer() throws IOException {
    planFor("{\"signs\": [{\"sign\": \"no-such-sign\"}]}", "75C", "let-out-the-band")
        .body("faults[0].pointer", equalTo("/fitting/signs/0/sign"));
  }
}
