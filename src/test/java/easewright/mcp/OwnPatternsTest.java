package easewright.mcp;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import io.modelcontextprotocol.client.McpSyncClient;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sheet of the operator's own is known wherever a pattern can be named. */
@QuarkusTest
class OwnPatternsTest {
  private static final String OWN = "wickenfell-top";
  private static final String NAME = "Wickenfell top";
  private static final String SHIPPED = "quillmere-top";
  private static final String PATTERN = "{\"pattern\": {\"sheet\": \"%s\"}, %s}";

  @Inject PatternSheets sheets;

  @TestHTTPResource("/")
  URI service;

  private void offer(boolean shippedToo) throws IOException {
    String text = Files.readString(Path.of("openapi/examples/small-sheet.yaml"));
    sheets.offer(List.of(sheets.readToOffer(text)), shippedToo);
  }

  @AfterEach
  void offerOnlyTheShipped() {
    sheets.offer(List.of(), true);
  }

  private static ValidatableResponse post(String path, String sheet, String more) {
    return given()
        .contentType("application/json")
        .body(PATTERN.formatted(sheet, more))
        .post(path)
        .then();
  }

  @Test
  void it_is_listed_first_and_can_be_read_whole() throws IOException {
    offer(true);
    given()
        .get("/v1/pattern-sheets")
        .then()
        .body("id[0]", equalTo(OWN))
        .body("id", hasItem(SHIPPED))
        .body("link[0]", equalTo("/v1/pattern-sheets/" + OWN));
    given()
        .get("/v1/pattern-sheets/" + OWN)
        .then()
        .contentType("application/json")
        .body("sizes.named.name", contains("1", "2"));
    offer(false);
    given().get("/v1/pattern-sheets").then().body("id", contains(OWN));
    given().get("/v1/pattern-sheets/" + SHIPPED).then().statusCode(200);
  }

  @Test
  void fittings_checks_and_plans_know_it() throws IOException {
    String girths = "\"body\": {\"bust\": \"86 cm\", \"underbust\": \"72 cm\"}";
    post("/v1/size-checks", OWN, girths)
        .statusCode(400)
        .body("faults[0].pointer", equalTo("/pattern/sheet"));
    offer(true);
    post("/v1/size-checks", OWN, girths).statusCode(200).body("size.chart", equalTo(OWN));
    post("/v1/fittings", OWN, girths).statusCode(200).body("understood.sheet", equalTo(OWN));
    post("/v1/cut-plans", OWN, "\"size\": \"1\"")
        .statusCode(200)
        .body("understood.name", equalTo(NAME));
    post(
            "/v1/cloth-checks",
            OWN,
            "\"cloth\": {\"main\": {\"around\": {\"marked\": \"10 cm\", \"stretched\": \"14 cm\"}}}")
        .statusCode(200)
        .body("layers[0].margins[0].text", containsString("the pattern asks 50 %"));
    given()
        .contentType("application/json")
        .body("{\"text\": \"My " + NAME + ", size 1: the band rides up at the back.\"}")
        .post("/v1/fittings")
        .then()
        .body("understood.sheet", equalTo(OWN))
        .body("understood.sizeCut", equalTo("1"));
  }

  @Test
  void a_wrong_name_is_answered_with_those_on_offer() throws IOException {
    offer(false);
    post("/v1/fittings", "no-such-top", "\"signs\": []")
        .statusCode(400)
        .body("faults[0].remedy", containsString(OWN))
        .body("faults[0].remedy", not(containsString(SHIPPED)));
  }

  /** As in examples, in stored fittings and in the sample clinic. */
  @Test
  void a_shipped_sheet_that_is_not_offered_is_still_answered() throws IOException {
    offer(false);
    post("/v1/cut-plans", SHIPPED, "\"size\": \"75C\"").statusCode(200);
    given()
        .contentType("application/x-www-form-urlencoded")
        .formParam("garment", SHIPPED + "/75C")
        .formParam("text", "The band rides up at the back.")
        .post("/desk")
        .then()
        .body(containsString("<option value=\"" + SHIPPED + "/75C\" selected>"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/desk/size", "/desk/cloth", "/desk/cut"})
  void the_desk_offers_it(String page) throws IOException {
    offer(false);
    given()
        .get(page)
        .then()
        .statusCode(200)
        .body(containsString(NAME))
        .body(not(containsString("value=\"" + SHIPPED)))
        .body(not(containsString("sheet=" + SHIPPED)));
  }

  @Test
  void an_assistant_is_told_of_it_also_after_the_tools_were_listed() throws IOException {
    try (McpSyncClient client = Tools.client(service)) {
      client.initialize();
      assertFalse(client.listTools().toString().contains(OWN));
      offer(true);
      assertTrue(client.listTools().toString().contains(OWN));
    }
  }

  /** A model pays for every word of every tool. */
  @Test
  void an_assistant_is_told_of_the_first_twenty() throws IOException {
    String text = Files.readString(Path.of("openapi/examples/small-sheet.yaml"));
    sheets.offer(
        IntStream.rangeClosed(1, 21)
            .mapToObj(i -> sheets.readToOffer(text.replaceFirst(OWN, "top-" + i)))
            .toList(),
        false);
    try (McpSyncClient client = Tools.client(service)) {
      client.initialize();
      String tools = client.listTools().toString();
      assertTrue(tools.contains("top-19, top-20, …"), tools);
      assertFalse(tools.contains("top-21"), tools);
    }
  }
}
