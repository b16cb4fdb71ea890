package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.rulebook.Catalog;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.Drawings;
import easewright.rulebook.Family;
import easewright.rulebook.Outline;
import easewright.rulebook.OutlineFault;
import easewright.rulebook.RuleBookSource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each family is drawn on its own garment, and on no other. */
@QuarkusTest
class FamilyDrawingsTest {
  private static final RuleBookSource BOOK = RuleBookSource.read(Path.of("rules"));
  private static final Family LEGGINGS = BOOK.families().get("leggings");
  private static final Drawings DRAWINGS = BOOK.drawings(LEGGINGS);

  @ParameterizedTest
  @ValueSource(strings = {"leggings", "t-shirt"})
  void every_sign_but_a_danger_and_every_change_is_drawn_with_marks_that_are_all_used(String id) {
    Family family = BOOK.families().get(id);
    Catalog catalog = BOOK.in(family).catalog();
    Drawings drawings = BOOK.drawings(family);
    Set<String> signs =
        catalog.signs().values().stream()
            .filter(sign -> !sign.redFlag())
            .map(SignEntry::id)
            .collect(Collectors.toSet());
    assertEquals(signs, drawings.signs().keySet());
    assertEquals(catalog.adjustments().keySet(), drawings.changes().keySet());
    Set<String> used = new HashSet<>();
    Stream.of(drawings.signs(), drawings.changes())
        .forEach(all -> all.values().forEach(used::addAll));
    assertEquals(
        Set.of(),
        family.drawings().marks().stream()
            .map(Drawings.Mark::id)
            .filter(mark -> !used.contains(mark))
            .collect(Collectors.toSet()));
  }

  @Test
  void every_drawing_is_served_on_the_garment_of_its_family() {
    for (String path :
        Stream.concat(
                DRAWINGS.signs().keySet().stream().map(id -> "signs/" + id),
                DRAWINGS.changes().keySet().stream().map(id -> "changes/" + id))
            .toList()) {
      String svg =
          given().queryParam("family", "leggings").get("/drawings/" + path + ".svg").asString();
      assertTrue(svg.contains("<title id=\"title\">"), path);
      assertTrue(!svg.contains("Nothing is marked."), path);
    }
    // A shared sign on each garment.
    String shared = "/drawings/signs/tight-everywhere.svg";
    String ours = given().get(shared + "?family=leggings").asString();
    assertTrue(ours.contains(LEGGINGS.drawings().garments().get(0).front().band()), ours);
    assertTrue(!given().get(shared).asString().equals(ours), ours);
    given().get("/drawings/signs/neckline-gapes.svg?family=leggings").then().statusCode(404);
    given().get("/drawings/signs/knees-bag-out.svg?family=sports-bra").then().statusCode(404);
  }

  @ParameterizedTest
  @ValueSource(strings = {"leggings", "t-shirt"})
  void every_place_of_a_change_can_be_marked_on_its_garment(String id) {
    Family family = BOOK.families().get(id);
    List<String> places =
        BOOK.in(family).catalog().adjustments().values().stream()
            .flatMap(change -> Stream.of(change.at(), change.alsoAt()))
            .filter(Objects::nonNull)
            .flatMap(List::stream)
            .distinct()
            .toList();
    List<String> undrawn = new ArrayList<>(places);
    undrawn.removeIf(family.outline()::marks);
    assertEquals(List.of(), undrawn);
  }

  @Test
  void a_place_is_shown_on_its_own_garment_only() {
    given()
        .get("/drawings/waistband.svg?family=leggings")
        .then()
        .statusCode(200)
        .body(containsString("Front of plain pull-on leggings"))
        .body(not(containsString("wire-free")));
    for (String none :
        List.of("waistband.svg", "neckline.svg?family=leggings", "hem.svg?family=x")) {
      given().get("/drawings/" + none).then().statusCode(404);
    }
    given().get("/rules/garment.svg?family=leggings").then().statusCode(200);
    given().get("/rules/garment.svg?family=x").then().statusCode(404);
  }

  @Test
  void an_answer_links_to_the_drawing_of_its_garment() {
    String asked =
        "{\"family\":\"leggings\",\"signs\":[{\"sign\":\"waistband-stands-off\",\"seen\":\"present\","
            + "\"amount\":\"3 cm\"},{\"sign\":\"leggings-slide-down\",\"seen\":\"present\"}]}";
    given()
        .contentType(ContentType.JSON)
        .body(asked)
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .body("adjustments[0].drawing", equalTo("/drawings/waistband.svg?family=leggings"));
  }

  @Test
  void the_desk_offers_the_places_and_signs_of_the_garment_asked_about() {
    String page = given().get("/desk?family=leggings").asString();
    for (String place : LEGGINGS.outline().down()) {
      assertTrue(page.contains("id=\"at-" + place + "\""), place);
    }
    assertTrue(!page.contains("id=\"at-strap\"") && !page.contains("id=\"at-underband\""));
    assertTrue(page.contains("name=\"family\" value=\"leggings\""));
    String usual = given().get("/desk").asString();
    assertTrue(usual.contains("id=\"at-strap\"") && !usual.contains("id=\"at-ankle\""));
    assertEquals(usual, given().get("/desk?family=x").asString());
  }

  @Test
  void a_drawing_with_more_than_lines_is_refused() throws Exception {
    String svg = Files.readString(Path.of("rules/leggings/outline.svg"));
    for (String[] no :
        new String[][] {
          {"<g class=\"drawn\">", "<g class=\"drawn\"><script/>", "A script is not drawn."},
          {"stroke-width=\"2\"", "onload=\"x\"", "onload"},
          {"id=\"hip\"", "id=\"thigh\"", "twice"},
          {"data-part=\"knee\"", "data-part=\"elbow\"", "elbow"},
          {"left 30 196 34", "left 30", "label"}
        }) {
      assertTrue(svg.contains(no[0]), no[0]);
      OutlineFault fault =
          assertThrows(OutlineFault.class, () -> Outline.read(svg.replace(no[0], no[1])));
      assertTrue(fault.getMessage().contains(no[2]), fault.getMessage());
    }
  }
}
