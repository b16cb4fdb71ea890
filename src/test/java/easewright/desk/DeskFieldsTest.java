package easewright.desk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever the contract lets a fitting say of the toile can be entered at the desk. */
@QuarkusTest
class DeskFieldsTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern SO_FAR = Pattern.compile("name=\"soFar\" value=\"([^\"]*)\"");

  private static RequestSpecification form() {
    return given()
        .accept("text/html")
        .contentType("application/x-www-form-urlencoded;charset=UTF-8")
        .formParam("goOn", "yes");
  }

  private static String soFarText(String page) {
    Matcher found = SO_FAR.matcher(page);
    assertTrue(found.find(), page);
    return found.group(1).replace("&quot;", "\"").replace("&#39;", "'").replace("&amp;", "&");
  }

  private static JsonNode soFar(String page) throws IOException {
    return JSON.readTree(soFarText(page));
  }

  private static JsonNode json(String text) throws IOException {
    return JSON.readTree(text.replace('\'', '"'));
  }

  @Test
  void everything_measured_and_tried_reaches_the_request() throws IOException {
    String page =
        form()
            .formParam("seen", "band-digs-in")
            .formParam("band-digs-in/when", "by-evening")
            .formParam("/measuredBy", "tape-helped")
            .formParam("/body/bust", "96")
            .formParam("/body/bust/over", "soft-bra")
            .formParam("/body/underbust", "78")
            .formParam("/body/underbust/breath", "out")
            .formParam("/garment/underband", "68")
            .formParam("/garment/bandCloth", "74")
            .formParam("/garment/strapWidth", "30")
            .formParam("/garment/edges/0/edge", "neckline")
            .formParam("/garment/edges/0/length", "54")
            .formParam("/garment/edges/0/elastic/cut", "50")
            .formParam("/garment/edges/0/elastic/width", "8")
            .formParam("/garment/edges/0/elastic/putOn", "turned")
            .formParam("/trials/1/adjustment", "Wedge out of the neckline")
            .formParam("/trials/1/amount", "1")
            .formParam("/trials/1/how", "pinned")
            .formParam("/trials/1/outcome", "right")
            .formParam("/earlier/0/adjustment", "shorten the straps")
            .formParam("/earlier/0/amount", "1")
            .formParam("/earlier/0/outcome", "same")
            .formParam("/earlier/1/size", "75C")
            .formParam("/earlier/1/outcome", "worse")
            .formParam("/earlier/1/better", "neckline gapes")
            .formParam("/fine", "cups", "straps")
            .formParam("/sizeCut", "75B")
            .formParam("/sizeSystem", "eu")
            .formParam("/design/back", "racer")
            .formParam("/design/stretchAsked", "60")
            .formParam("/design/seamAllowance", "10")
            .formParam("/design/seamsAround", "4")
            .formParam("/design/drafted/underband", "66")
            .post("/desk")
            .asString();
    JsonNode told = soFar(page);
    assertEquals(json("['by-evening']"), array(told.at("/signs/0/when")), told::toString);
    assertEquals("tape-helped", told.path("measuredBy").asText());
    assertEquals("soft-bra", told.at("/body/bust/over").asText(), told::toString);
    assertEquals("out", told.at("/body/underbust/breath").asText());
    assertEquals("74 cm", told.at("/garment/bandCloth").asText());
    assertEquals("30 mm", told.at("/garment/strapWidth").asText());
    assertEquals(
        json(
            "[{'edge': 'neckline', 'length': '54 cm', 'elastic': {'cut': '50 cm', 'width': '8 mm',"
                + " 'putOn': 'turned'}}]"),
        told.at("/garment/edges"));
    assertEquals(
        json(
            "[{'adjustment': 'wedge-out-of-the-neckline', 'amount': '1 cm', 'how': 'pinned',"
                + " 'outcome': 'right'}]"),
        told.at("/trials"));
    assertEquals(
        json(
            "[{'adjustment': 'shorten-the-straps', 'amount': '1 cm', 'outcome': 'same'}, {'size':"
                + " '75C', 'outcome': 'worse', 'better': ['neckline-gapes']}]"),
        told.at("/earlier"));
    assertEquals(json("['cups', 'straps']"), told.at("/fine"));
    assertEquals("75B", told.path("sizeCut").asText());
    assertEquals("eu", told.path("sizeSystem").asText());
    assertEquals(
        json(
            "{'back': 'racer', 'stretchAsked': '60 %', 'seamAllowance': '10 mm', 'seamsAround': 4,"
                + " 'drafted': {'underband': '66 cm'}}"),
        told.path("design"));

    // Going on shows what was told, and leaves the rows empty for more.
    assertTrue(page.contains("name=\"/garment/underband\" value=\"68 cm\""), page);
    assertTrue(page.contains("<option value=\"racer\" selected>"), page);
    assertTrue(page.contains("name=\"/fine\" value=\"cups\" checked"), page);
    assertTrue(page.contains("name=\"/trials/0/adjustment\" value=\"\""), page);
  }

  private static JsonNode array(JsonNode node) {
    return node.isTextual() ? JSON.createArrayNode().add(node) : node;
  }

  @Test
  void what_a_post_tells_fills_the_fields_and_an_emptied_field_withdraws_it() throws IOException {
    String first =
        form()
            .formParam("text", "My bust is 96 cm and my underbust 78 cm, the band digs in.")
            .post("/desk")
            .asString();
    assertTrue(first.contains("name=\"/body/bust\" value=\"96 cm\""), first);
    JsonNode second =
        soFar(
            form()
                .formParam("soFar", soFarText(first))
                .formParam("fieldsShown", "yes")
                .formParam("/body/bust", "")
                .formParam("/body/underbust", "78 cm")
                .post("/desk")
                .asString());
    assertTrue(second.at("/body/bust").isMissingNode(), second::toString);
    assertEquals("78 cm", second.at("/body/underbust").asText());
  }

  @Test
  void several_times_and_ranges_told_elsewhere_stay() throws IOException {
    String told =
        "{\"signs\": [{\"sign\": \"band-pulls-off-the-body\", \"seen\": \"present\", \"amount\":"
            + " {\"from\": \"2 cm\", \"to\": \"3 cm\"}, \"when\": [\"by-evening\","
            + " \"after-a-wash\"]}]}";
    JsonNode next =
        soFar(
            form()
                .formParam("soFar", told)
                .formParam("signsShown", "yes")
                .formParam("seen", "band-pulls-off-the-body")
                .formParam("band-pulls-off-the-body/amount", "")
                .formParam("band-pulls-off-the-body/when", "")
                .post("/desk")
                .asString());
    assertEquals("2 cm", next.at("/signs/0/amount/from").asText(), next::toString);
    assertEquals(2, next.at("/signs/0/when").size(), next::toString);
  }

  @ParameterizedTest
  @CsvSource({
    "/garment/bandCloth, ninety, garment-bandCloth",
    "/body/bustLeft, 45, body-bustRight",
    "/trials/0/adjustment, tie a bow, trials-0-adjustment",
    "/sizeCut, 75B, ''"
  })
  void a_fault_stands_at_its_field_and_opens_its_group(String name, String value, String id) {
    String page =
        form()
            .formParam("seen", "band-digs-in")
            .formParam("/body/underbust", "75")
            .formParam(name, value)
            .post("/desk")
            .asString();
    if (id.isEmpty()) {
      assertFalse(page.contains("Please check this:"), page);
    } else {
      int at = page.indexOf("id=\"" + id + "\"");
      assertTrue(at > 0, page);
      assertTrue(page.indexOf("aria-invalid=\"true\"", at) > 0, page);
      int group = page.lastIndexOf("<details", at);
      assertTrue(page.startsWith("<details class=\"place\" open", group), page);
    }
  }

  @Test
  void an_untouched_group_says_nothing_and_stays_closed() {
    String page = given().accept("text/html").get("/desk").asString();
    assertFalse(page.contains("<details class=\"place\" open"), page);
    for (String name : ToileFields.names()) {
      assertTrue(page.contains("name=\"" + name + "\""), name);
    }
  }

  @Test
  void the_page_of_a_case_has_the_same_fields() {
    given()
        .accept("text/html")
        .get("/desk")
        .then()
        .body(containsString("Where all is well"), containsString("What was tried"));
    for (String list : List.of("changes", "signs")) {
      given().accept("text/html").get("/desk").then().body(containsString("id=\"" + list + "\""));
    }
  }
}
