package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.UsualBook;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The drawing a reply links to. */
@QuarkusTest
class DrawingsTest {
  private static final String SVG = "http://www.w3.org/2000/svg"; // SVG 1.1, section 1.3

  /** As in rules/marked.html. */
  private static final int LABEL_SIZE = 17;

  private static final Pattern COLOUR =
      Pattern.compile("\\.marked( \\.(paper|place|spot))? \\{ (color|fill|stroke): (#[0-9a-f]{6})");

  @Test
  void every_place_adjustments_are_made_at_has_a_drawing_that_names_it() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    for (String place : places()) {
      Response response = given().get("/drawings/" + place + ".svg");
      assertEquals(200, response.statusCode(), place);
      assertTrue(response.contentType().startsWith("image/svg+xml"), response.contentType());
      assertEquals("public, max-age=86400", response.header("Cache-Control"));
      Document svg =
          factory.newDocumentBuilder().parse(new ByteArrayInputStream(response.asByteArray()));
      assertEquals(SVG, svg.getDocumentElement().getNamespaceURI());
      String name = place.replace('-', ' ');
      assertTrue(text(svg, "title").endsWith(": " + name), text(svg, "title"));
      assertTrue(text(svg, "desc").toLowerCase().contains(name), text(svg, "desc"));
      List<String> words =
          IntStream.range(0, svg.getElementsByTagNameNS(SVG, "text").getLength())
              .mapToObj(i -> svg.getElementsByTagNameNS(SVG, "text").item(i).getTextContent())
              .toList();
      assertTrue(words.contains(name) && words.size() == 2, words::toString);
      assertFits(svg, name);
    }
  }

  /** A bold letter is seldom wider than two thirds of the font size: common practice. */
  private static void assertFits(Document svg, String name) {
    String[] view = svg.getDocumentElement().getAttribute("viewBox").split(" ");
    double left = Double.parseDouble(view[0]);
    double right = left + Double.parseDouble(view[2]);
    for (int i = 0; i < svg.getElementsByTagNameNS(SVG, "text").getLength(); i++) {
      Element word = (Element) svg.getElementsByTagNameNS(SVG, "text").item(i);
      double x = Double.parseDouble(word.getAttribute("x"));
      double width = word.getTextContent().length() * LABEL_SIZE * 2 / 3.0;
      double from =
          switch (word.getAttribute("text-anchor")) {
            case "end" -> x - width;
            case "middle" -> x - width / 2;
            default -> x;
          };
      assertTrue(from >= left && from + width <= right, name);
    }
  }

  private static List<String> places() {
    return UsualBook.read().catalog().adjustments().values().stream()
        .flatMap(change -> Stream.of(change.at(), change.alsoAt()))
        .filter(Objects::nonNull)
        .flatMap(List::stream)
        .distinct()
        .toList();
  }

  private static String text(Document svg, String element) {
    return svg.getElementsByTagNameNS(SVG, element).item(0).getTextContent();
  }

  @Test
  void a_place_that_is_not_drawn_is_not_found() {
    for (String place : List.of("all-over", "elbow", "..%2Fx")) {
      given()
          .urlEncodingEnabled(false)
          .get("/drawings/" + place + ".svg")
          .then()
          .statusCode(404)
          .contentType("application/problem+json")
          .body("type", equalTo("/problems/not-found"));
    }
  }

  /**
   * WCAG 2.2: 1.4.3 requires 4.5 : 1 for text, 1.4.11 3 : 1 for the meaningful parts of a graphic.
   */
  @Test
  void the_mark_and_the_words_stand_out_in_light_and_dark() {
    String svg = given().get("/drawings/neckline.svg").asString();
    String dark = "@media (prefers-color-scheme: dark)";
    int at = svg.indexOf(dark);
    int end = svg.indexOf("@media print");
    for (String style : List.of(svg.substring(0, at), svg.substring(at, end))) {
      assertTrue(contrast(colour(style, ""), colour(style, " .paper")) >= 4.5, style);
      assertTrue(contrast(colour(style, " .place"), colour(style, " .paper")) >= 3, style);
    }
  }

  private static String colour(String style, String part) {
    Matcher found = COLOUR.matcher(style);
    while (found.find()) {
      if (Objects.requireNonNullElse(found.group(1), "").equals(part)) {
        return found.group(4);
      }
    }
    throw new AssertionError("no colour for" + part + " in " + style);
  }

  /** Contrast ratio as WCAG 2.2 defines it. */
  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(String colour) {
    double[] rgb =
        IntStream.of(1, 3, 5)
            .mapToDouble(i -> Integer.parseInt(colour.substring(i, i + 2), 16) / 255.0)
            .map(c -> c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4))
            .toArray();
    return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
  }
}
