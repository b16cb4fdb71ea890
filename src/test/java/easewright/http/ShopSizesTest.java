package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sizes as shops print them: letters, groups of cups, two labels on one size, overlaps. */
@QuarkusTest
class ShopSizesTest {
  private static final YAMLMapper YAML = new YAMLMapper();

  // EN 13402-3, letter codes by the bust girth alone (from memory): S 82 to 90, M 90 to 98, L 98 to
  // 107 cm.
  private static final String BY_BUST =
      """
      named:
        - { name: S, bust: { from: "82 cm", to: "90 cm" }, measurements: MADE }
        - { name: M, bust: { from: "90 cm", to: "98 cm" }, measurements: MADE }
        - { name: L, bust: { from: "98 cm", to: "107 cm" }, measurements: MADE }
      """;

  // Cups of EN 13402-3 every 2 cm, bands every 5 cm; a British 32 is an EU 70, a 34 an EU 75
  // (second-hand, an encyclopaedia). A shop's M of the cups 32D, 34B and 34C is common practice.
  private static final String CUP_GROUPS =
      """
      named:
        - name: S
          aliases: { uk: [32B, 32C], eu: ["70B", "70C"] }
          underbust: { from: "67.5 cm", to: "72.5 cm" }
          difference: { from: "14 cm", to: "18 cm" }
          measurements: MADE
        - name: M
          aliases: { uk: [32D, 34B, 34C], eu: ["70D", "75B", "75C"], any: "38/40" }
          bodies:
            - { underbust: { from: "67.5 cm", to: "72.5 cm" }, difference: { from: "18 cm", to: "20 cm" } }
            - { underbust: { from: "72.5 cm", to: "77.5 cm" }, difference: { from: "14 cm", to: "18 cm" } }
          measurements: MADE
        - name: L
          aliases: { uk: [34DD/E, 36B], us: [34DD, 36B, 34C], eu: ["75D", "80B"] }
          bodies:
            - { underbust: { from: "72.5 cm", to: "77.5 cm" }, difference: { from: "18 cm", to: "20 cm" } }
            - { underbust: { from: "77.5 cm", to: "82.5 cm" }, difference: { from: "14 cm", to: "16 cm" } }
          measurements: MADE
      """;

  private static final String OVERLAPPING =
      """
      overlapping: true
      named:
        - { name: S, bust: { from: "80 cm", to: "88 cm" }, measurements: MADE }
        - { name: M, bust: { from: "86 cm", to: "94 cm" }, measurements: MADE }
        - { name: L/XL, bust: { from: "94 cm", to: "106 cm" }, measurements: MADE }
      """;

  private static final String BANDS_OF_TWO =
      """
      named:
        - { name: 70/75 B, underbust: { from: "67.5 cm", to: "77.5 cm" }, difference: { from: "14 cm", to: "16 cm" }, measurements: MADE }
        - { name: 70/75 C, underbust: { from: "67.5 cm", to: "77.5 cm" }, difference: { from: "16 cm", to: "18 cm" }, measurements: MADE }
        - { name: 80/85 B, underbust: { from: "77.5 cm", to: "87.5 cm" }, difference: { from: "14 cm", to: "16 cm" }, measurements: MADE }
        - { name: 90/95 B, underbust: { from: "87.5 cm", to: "97.5 cm" }, difference: { from: "14 cm", to: "16 cm" }, measurements: MADE }
      """;

  private static ObjectNode sheet(String sizes) {
    try {
      ObjectNode sheet =
          (ObjectNode)
              YAML.readTree(Files.readString(Path.of("openapi/examples/small-sheet.yaml")));
      JsonNode made = sheet.at("/sizes/named/0/measurements");
      ObjectNode read = (ObjectNode) YAML.readTree(sizes);
      read.path("named").forEach(size -> ((ObjectNode) size).set("measurements", made));
      sheet.set("sizes", read);
      return sheet;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static ValidatableResponse post(String path, String sizes, String more) {
    return posted(path, "application/json", sizes, more);
  }

  private static ValidatableResponse posted(String path, String type, String sizes, String more) {
    try {
      ObjectNode body = (ObjectNode) new ObjectMapper().readTree(more);
      body.putObject("pattern").set("inline", sheet(sizes));
      return given()
          .contentType(ContentType.JSON)
          .accept(type)
          .body(body.toString())
          .post(path)
          .then();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static JsonPath check(String sizes, String more) {
    return post("/v1/size-checks?detail=full", sizes, more).statusCode(200).extract().jsonPath();
  }

  private static String girths(String underbust, String bust) {
    return "{\"measuredBy\": \"expert-tape\", \"body\": {\"bust\": \"%s\", \"underbust\": \"%s\"}}"
        .formatted(bust, underbust);
  }

  // EN 13402-3's letters as above; the probability by the normal distribution of Commons Math.
  @ParameterizedTest
  @CsvSource({"86, S, 82, 90", "94, M, 90, 98", "97, M, 90, 98", "102, L, 98, 107"})
  void a_chart_by_the_bust_alone_asks_for_no_underbust(int bust, String size, int from, int to) {
    JsonPath answer =
        check(
            BY_BUST,
            "{\"measuredBy\": \"tape-helped\", \"body\": {\"bust\": \"" + bust + " cm\"}}");
    double sd = answer.getDouble("size.tapeError.bustMm");
    assertEquals(size, answer.getString("size.recommended.size"));
    // The standard deviation is told to a tenth of a millimetre.
    assertEquals(
        new NormalDistribution(bust * 10, sd).probability(from * 10, to * 10),
        answer.getDouble("size.recommended.probability"),
        0.003);
    assertEquals(List.of("bust"), answer.getList("sharpen.measurement"));
    assertNull((Object) answer.get("size.tapeError.underbustMm"));
  }

  @Test
  void a_fitting_on_a_chart_by_the_bust_alone_names_the_size() {
    for (String type : List.of("application/json", "text/markdown", "text/html", "text/plain")) {
      posted(
              "/v1/fittings",
              type,
              BY_BUST,
              "{\"body\": {\"bust\": \"94 cm\"}, \"sizeCut\": \"S\", \"signs\": [{\"sign\": \"band-digs-in\"}]}")
          .statusCode(200)
          .body(containsString("M"));
    }
    post(
            "/v1/fittings",
            BY_BUST,
            "{\"body\": {\"bust\": \"94 cm\", \"underbust\": \"76 cm\"}, \"sizeCut\": \"S\", \"signs\": [{\"sign\": \"band-digs-in\"}]}")
        .statusCode(200)
        .body("size.recommended.size", equalTo("M"));
  }

  // Additivity: a size of several cells is as probable as these cells of EN 13402-3 together.
  @ParameterizedTest
  @CsvSource({"74 cm, 91 cm", "72 cm, 91 cm", "75 cm, 90 cm", "71 cm, 90 cm"})
  void a_size_of_several_cups_is_as_probable_as_all_of_them(String underbust, String bust) {
    double sum = 0;
    JsonPath standard =
        given()
            .contentType(ContentType.JSON)
            .body(girths(underbust, bust))
            .post("/v1/size-checks")
            .then()
            .extract()
            .jsonPath();
    List<String> sizes = standard.getList("size.neighbours.size");
    for (String cell : List.of("70 D", "75 B", "75 C")) {
      sum +=
          cell.equals(standard.getString("size.recommended.size"))
              ? standard.getDouble("size.recommended.probability")
              : sizes.contains(cell)
                  ? standard.getDouble("size.neighbours[" + sizes.indexOf(cell) + "].probability")
                  : 0;
    }
    JsonPath answer = check(CUP_GROUPS, girths(underbust, bust));
    assertEquals("M", answer.getString("size.recommended.size"));
    double stated = answer.getDouble("size.recommended.probability");
    // Neighbours below 5 % are not listed.
    assertTrue(stated >= sum - 0.001 && stated <= sum + 0.1, stated + " of " + sum);
  }

  @Test
  void the_names_of_the_recommended_size_elsewhere_are_given() {
    JsonPath answer = check(CUP_GROUPS, girths("75 cm", "90 cm"));
    assertEquals(
        List.of("uk 32D", "uk 34B", "uk 34C", "eu 70D", "eu 75B", "eu 75C", "null 38/40"),
        answer.getList("size.alsoCalled.collect { it.region + ' ' + it.label }"));
    for (String type : List.of("text/markdown", "text/html")) {
      posted("/v1/size-checks", type, CUP_GROUPS, girths("75 cm", "90 cm"))
          .statusCode(200)
          .body(containsString("Also called UK 32D"));
      posted("/v1/fittings", type, CUP_GROUPS, girths("75 cm", "90 cm"))
          .statusCode(200)
          .body(containsString("Also called UK 32D"));
    }
  }

  // By the labels of the sheets above.
  @ParameterizedTest
  @CsvSource({
    "34B, , M",
    "34 b, uk, M",
    "75C, eu, M",
    "38/40, , M",
    "34C, uk, M",
    "34C, us, L",
    "34DD, , L",
    "34E, uk, L",
    "34DD/E, , L",
    "m, , M"
  })
  void a_size_may_be_given_by_any_name_the_sheet_has(String written, String region, String size) {
    String system = region == null ? "" : ", \"sizeSystem\": \"" + region + "\"";
    String cut = "{\"signs\": [{\"sign\": \"band-digs-in\"}], \"sizeCut\": \"%s\"%s}";
    post("/v1/fittings", CUP_GROUPS, cut.formatted(written, system))
        .statusCode(200)
        .body("understood.sizeCut", equalTo(size));
    post("/v1/cut-plans", CUP_GROUPS, "{\"size\": \"%s\"%s}".formatted(written, system))
        .statusCode(200)
        .body("understood.upperSize", equalTo(size));
    String printedIn = region == null ? "" : ", \"printedIn\": \"" + region + "\"";
    JsonPath converted =
        check(CUP_GROUPS, "{\"label\": {\"text\": \"%s\"%s}}".formatted(written, printedIn));
    assertEquals(List.of(size), converted.getList("converted.onSheet"));
  }

  @ParameterizedTest
  @CsvSource({"70 B, 70/75 B", "75B, 70/75 B", "85 B, 80/85 B", "70/75 c, 70/75 C"})
  void either_half_of_a_label_of_two_bands_names_the_size(String written, String size) {
    post("/v1/cut-plans", BANDS_OF_TWO, "{\"size\": \"" + written + "\"}")
        .statusCode(200)
        .body("understood.upperSize", equalTo(size));
  }

  @Test
  void either_half_of_a_letter_of_two_names_the_size() {
    post("/v1/cut-plans", OVERLAPPING, "{\"size\": \"XL\"}")
        .statusCode(200)
        .body("understood.upperSize", equalTo("L/XL"));
  }

  @Test
  void an_earlier_toile_may_be_named_by_a_label_too() {
    post(
            "/v1/fittings",
            CUP_GROUPS,
            "{\"sizeCut\": \"M\", \"signs\": [{\"sign\": \"band-digs-in\"}], \"earlier\": [{\"size\": \"36B\", \"outcome\": \"worse\"}]}")
        .statusCode(200);
  }

  @Test
  void a_label_of_two_sizes_asks_for_the_sheet_s_own_name() {
    post(
            "/v1/fittings",
            CUP_GROUPS,
            "{\"sizeCut\": \"34C\", \"signs\": [{\"sign\": \"band-digs-in\"}]}")
        .statusCode(422)
        .body("faults.pointer", contains("/sizeCut"))
        .body("faults[0].problem", containsString("M, L"))
        .body("faults[0].remedy", containsString("sizeSystem"));
    post("/v1/cut-plans", CUP_GROUPS, "{\"size\": \"40C\"}")
        .statusCode(400)
        .body("faults.pointer", contains("/size"));
    post(
            "/v1/fittings",
            BY_BUST,
            "{\"sizeCut\": \"M\", \"sizeSystem\": \"uk\", \"signs\": [{\"sign\": \"band-digs-in\"}]}")
        .statusCode(422)
        .body("faults.pointer", contains("/sizeSystem"));
  }

  // Symmetry: 87 cm is the middle of what S and M share, so both are as right; with a perfect tape
  // each would have a half.
  @Test
  void a_body_in_two_sizes_hears_that_either_is_right() {
    String asked = "{\"measuredBy\": \"expert-tape\", \"body\": {\"bust\": \"87 cm\"}}";
    JsonPath answer = check(OVERLAPPING, asked);
    double sum = answer.getDouble("size.recommended.probability");
    assertEquals(0.5, sum, 0.001);
    assertEquals(0.5, answer.getDouble("size.neighbours[0].probability"), 0.001);
    assertTrue(answer.getBoolean("size.between"));
    assertTrue(answer.getString("size.shared").contains("S and M"));
    // The sheet compresses, and common practice takes the smaller then.
    assertEquals("S", answer.getString("take.size"));
    posted("/v1/size-checks", "text/markdown", OVERLAPPING, asked)
        .body(containsString("S and M for these girths alike"));
    assertNull((Object) check(OVERLAPPING, "{\"body\": {\"bust\": \"91 cm\"}}").get("size.shared"));
    post(
            "/v1/fittings",
            OVERLAPPING,
            "{\"body\": {\"bust\": \"87 cm\"}, \"signs\": [{\"sign\": \"band-digs-in\"}]}")
        .statusCode(200)
        .body("size.shared", containsString("S and M"));
  }

  @Test
  void where_room_comes_first_no_smaller_of_two_sizes_is_named() {
    String nursing =
        "{\"measuredBy\": \"expert-tape\", \"body\": {\"bust\": \"87 cm\"}, \"circumstances\": {\"nursing\": true}}";
    JsonPath answer = check(OVERLAPPING, nursing);
    assertEquals("M", answer.getString("take.size"));
    assertNull((Object) answer.get("size.shared"));
    assertEquals(List.of(), answer.getList("size.neighbours"));
  }

  // Common practice: an edge is blended into the next size only.
  @Test
  void a_plan_of_two_sizes_far_apart_has_a_caution() {
    String sizes = "{\"sizes\": {\"lower\": \"70/75 B\", \"upper\": \"%s\"}}";
    post("/v1/cut-plans", BANDS_OF_TWO, sizes.formatted("90/95 B"))
        .statusCode(200)
        .body("cautions", hasItem(containsString("2 bands apart")));
    post("/v1/cut-plans", BANDS_OF_TWO, sizes.formatted("80/85 B"))
        .statusCode(200)
        .body("cautions", not(hasItem(containsString("bands apart"))));
  }

  // Every size shares bodies with ten neighbours on each side, in both girths.
  @Test
  void a_chart_whose_sizes_overlap_without_end_is_refused_in_plain_words() {
    StringBuilder sizes = new StringBuilder("overlapping: true\nnamed:\n");
    for (int i = 0; i < 60; i++) {
      sizes.append(
          "  - { name: n%d, underbust: { from: \"%d cm\", to: \"%d cm\" }, bust: { from: \"%d cm\", to: \"%d cm\" }, measurements: MADE }\n"
              .formatted(i, 60 + i, 71 + i, 70 + i, 81 + i));
    }
    post("/v1/cut-plans", sizes.toString(), "{\"size\": \"n1\"}")
        .statusCode(400)
        .body("faults[0].pointer", equalTo("/pattern/inline/sizes/overlapping"))
        .body("faults[0].problem", containsString("overlap in too many places"));
  }
}
