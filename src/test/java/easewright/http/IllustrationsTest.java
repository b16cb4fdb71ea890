package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Drawings;
import easewright.rulebook.Family;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/**
 * Drawings of signs and changes: well-formed SVG 1.1 with a name and a description for whoever
 * cannot see them (WCAG 2.2, success criterion 1.1.1), one for each, and inside their frame.
 */
@QuarkusTest
class IllustrationsTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Drawings DRAWINGS = BOOK.drawings(Family.usual(BOOK.families()));
  private static final Pattern ABSOLUTE = Pattern.compile("([MLQC])([-0-9. ]+)");

  @Inject PatternSheets sheets;

  @Test
  void every_sign_but_a_danger_and_every_change_of_the_usual_family_is_drawn() {
    Set<String> signs =
        BOOK.catalog().signs().values().stream()
            .filter(sign -> !sign.redFlag())
            .map(SignEntry::id)
            .collect(Collectors.toSet());
    assertEquals(signs, DRAWINGS.signs().keySet());
    assertEquals(BOOK.catalog().adjustments().keySet(), DRAWINGS.changes().keySet());
  }

  @Test
  void every_mark_is_used_and_every_shipped_pattern_has_its_own_garment() {
    Set<String> used = new HashSet<>();
    Stream.of(DRAWINGS.signs(), DRAWINGS.changes())
        .forEach(all -> all.values().forEach(used::addAll));
    assertEquals(
        used, DRAWINGS.marks().stream().map(Drawings.Mark::id).collect(Collectors.toSet()));
    Set<String> drawn =
        DRAWINGS.garments().stream().map(Drawings.GarmentShape::id).collect(Collectors.toSet());
    sheets.shipped().forEach(sheet -> assertTrue(drawn.contains(sheet.id()), sheet.id()));
  }

  /** All points, also those that only bend a curve, lie within the frame. */
  @Test
  void nothing_is_drawn_outside_the_frame() {
    Set<String> outside = new TreeSet<>();
    for (Drawings.Mark mark : DRAWINGS.marks()) {
      for (String path : mark.paths()) {
        Matcher part = ABSOLUTE.matcher(path);
        while (part.find()) {
          String[] numbers = part.group(2).strip().split("[ ,]+");
          for (int i = 0; i < numbers.length; i++) {
            double at = Double.parseDouble(numbers[i]);
            if (at < (i % 2 == 0 ? 20 : 0) || at > (i % 2 == 0 ? 340 : 270)) {
              outside.add(mark.id() + ": " + path);
            }
          }
        }
      }
    }
    assertEquals(Set.of(), outside);
  }

  @Test
  void every_drawing_is_svg_with_a_name_and_a_description() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    for (String path :
        Stream.concat(
                DRAWINGS.signs().keySet().stream().map(id -> "signs/" + id),
                DRAWINGS.changes().keySet().stream().map(id -> "changes/" + id))
            .toList()) {
      Response response = given().get("/drawings/" + path + ".svg");
      assertEquals(200, response.statusCode(), path);
      assertTrue(response.contentType().startsWith("image/svg+xml"), response.contentType());
      Document svg =
          factory.newDocumentBuilder().parse(new ByteArrayInputStream(response.asByteArray()));
      assertEquals("http://www.w3.org/2000/svg", svg.getDocumentElement().getNamespaceURI());
      String name = path.replaceAll(".*/", "").replace('-', ' ');
      assertEquals(name, text(svg, "title").toLowerCase(), path);
      assertTrue(text(svg, "desc").matches("(?s)(The|A) .+\\. \\S.+\\."), text(svg, "desc"));
    }
  }

  private static String text(Document svg, String element) {
    return svg.getElementsByTagNameNS("*", element).item(0).getTextContent();
  }

  @Test
  void a_pattern_is_drawn_as_it_is_made_and_an_amount_is_written_beside() {
    String change = "/drawings/changes/take-in-the-band.svg";
    String plain = given().get(change).asString();
    assertNotEquals(plain, given().get(change + "?sheet=larkhythe-soft-top").asString());
    assertEquals(plain, given().get(change + "?sheet=a-sheet-of-ones-own").asString());
    assertTrue(
        given().queryParam("amount", "1 1/8 in.").get(change).asString().contains(">1 1/8 in.<"));
    for (String no : new String[] {"20", "<b>", "20 mm<script>", "-1 mm", "9".repeat(40) + "mm"}) {
      given()
          .queryParam("amount", no)
          .get(change)
          .then()
          .statusCode(400)
          .body("type", equalTo("/problems/parameter"));
    }
    for (String none : new String[] {"signs/none", "changes/none", "changes/neckline-gapes"}) {
      given().get("/drawings/" + none + ".svg").then().statusCode(404);
    }
  }

  @Test
  void a_danger_is_not_drawn_on_a_garment() {
    String danger = given().get("/drawings/signs/sharp-breast-pain.svg").asString();
    assertTrue(danger.contains("Nothing is marked."), danger);
  }
}
