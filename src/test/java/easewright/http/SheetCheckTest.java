package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** YAML has its media type from RFC 9512, problems have the form of RFC 9457. */
@QuarkusTest
class SheetCheckTest {
  private static ValidatableResponse check(String form, String body) {
    return given()
        .contentType(form)
        .body(body.getBytes(StandardCharsets.UTF_8))
        .post("/v1/pattern-sheets/checks")
        .then();
  }

  private static String small() throws IOException {
    return Files.readString(Path.of("openapi/examples/small-sheet.yaml"));
  }

  @Test
  void the_sheet_recommended_to_shops_as_a_start_is_valid() throws IOException {
    assertTrue(
        Files.readString(Path.of("openapi", "pattern-sheets.md"))
            .contains("```yaml\n" + small() + "```"));
  }

  @Test
  void a_valid_sheet_gets_a_summary() throws IOException {
    for (String form : List.of("application/yaml", "text/yaml", "application/yaml;charset=UTF-8")) {
      check(form, small())
          .statusCode(200)
          .contentType("application/json")
          .body("valid", equalTo(true))
          .body("sizes", equalTo(List.of("1", "2")))
          .body("cut.piece", equalTo(List.of("front", "back")))
          .body("cut[0].onFold", equalTo(true))
          // 95 % of 65 cm and 72 cm, and 2 cm to join.
          .body("trims[0].lengthsMm", equalTo(List.of(637.5f, 704)));
    }
  }

  @Test
  void faults_of_a_sheet_are_reported_with_their_lines_in_the_order_of_the_text()
      throws IOException {
    String broken =
        small()
            .replace("base: \"34 cm\"", "base: \"34\"")
            .replace("supportClass: low", "supportClass: some")
            .replace("kind: elastic, width: \"3 cm\"", "kind: ribbon, width: \"3 cm\"");
    List<String> lines = broken.lines().toList();
    List<Integer> told =
        check("application/yaml", broken)
            .statusCode(422)
            .contentType("application/problem+json")
            .body("faults", hasSize(3))
            .body("faults.pointer", hasItems("/supportClass", "/trims/0/kind"))
            .extract()
            .path("faults.line");
    assertTrue(lines.get(told.get(0) - 1).contains("supportClass"), told::toString);
    assertTrue(lines.get(told.get(1) - 1).contains("\"34\""), told::toString);
    assertTrue(lines.get(told.get(2) - 1).contains("ribbon"), told::toString);
  }

  @Test
  void a_sheet_in_json_is_read_with_its_lines_too_even_where_tabs_indent_it() throws IOException {
    ObjectNode sheet = (ObjectNode) new YAMLMapper().readTree(small());
    sheet.put("supportClass", "some");
    String text = new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(sheet);
    int line = text.substring(0, text.indexOf("supportClass")).split("\n").length;
    check("application/json", text.replace("  ", "\t"))
        .statusCode(422)
        .body("faults[0].pointer", equalTo("/supportClass"))
        .body("faults[0].line", equalTo(line));
  }

  @Test
  void text_that_is_no_sheet_at_all_is_unreadable_at_its_line() {
    check("application/yaml", "id: a\nname: [\n")
        .statusCode(400)
        .body("type", equalTo("/problems/unreadable"))
        .body("faults[0].problem", containsString("cannot be read as YAML"));
    check("application/yaml", "id: a\nname: b\n\tfamily: c\n")
        .statusCode(400)
        .body("faults[0].line", equalTo(3))
        .body("faults[0].remedy", containsString("spaces"));
    check("application/json", "{\n\"id\": }").statusCode(400).body("faults[0].line", equalTo(2));
    check("application/yaml", "").statusCode(422).body("faults", not(hasSize(0)));
  }

  @Test
  void a_form_that_is_neither_is_refused_with_those_taken() {
    check("text/plain", "id: a")
        .statusCode(415)
        .body("detail", containsString("application/yaml"))
        .header("Accept", containsString("application/json"));
    check("application/yaml", " ".repeat(256 * 1024 + 1)).statusCode(413);
  }

  @Test
  void the_path_accepts_a_sheet_and_returns_none() {
    given()
        .get("/v1/pattern-sheets/checks")
        .then()
        .statusCode(405)
        .header("Allow", equalTo("POST"));
  }

  @Test
  void every_shipped_sheet_passes_as_it_is_served() {
    for (String link :
        given().get("/v1/pattern-sheets").then().extract().<List<String>>path("link")) {
      check("application/json", given().get(link).asString())
          .statusCode(200)
          .body("faults", nullValue())
          .body("cut", not(hasSize(0)));
    }
    given()
        .get("/v1/pattern-sheets")
        .then()
        .body("id", hasItem("ossenby-pull-on"))
        .body("id", hasItem("larkhythe-soft-top"));
  }
}
