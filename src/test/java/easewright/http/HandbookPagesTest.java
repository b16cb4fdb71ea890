package easewright.http;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.contract.ProblemKind;
import easewright.rulebook.Parameter;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RuleText;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/**
 * The handbook as served: every page of the book exists, has no dead links, and loads nothing from
 * other sites. Sources are compared with the rule book's own files.
 */
@QuarkusTest
class HandbookPagesTest {
  private static final RuleBookSource SOURCE = RuleBookSource.read(java.nio.file.Path.of("rules"));
  private static final Pattern LINK = Pattern.compile("href=\"([^\"]*)\"");
  private static final Pattern ID = Pattern.compile(" id=\"([^\"]*)\"");

  private static Response get(String path) {
    return given().accept("text/html, */*;q=0.1").get(path);
  }

  private static String page(String path) {
    Response response = get(path);
    assertEquals(200, response.statusCode(), path);
    return response.asString();
  }

  /** Text as escaped in HTML. */
  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }

  private static void holds(String path, String page, String text, List<String> missing) {
    if (text != null && !page.contains(escaped(text))) {
      missing.add(path + ": " + text);
    }
  }

  @Test
  void every_page_of_rules_holds_its_rules_their_sources_and_their_numbers() {
    List<String> missing = new ArrayList<>();
    for (String id : SOURCE.pages().keySet()) {
      String path = "/rules/" + id;
      String page = page(path);
      for (RuleText rule : SOURCE.rules().stream().filter(r -> r.file().equals(id)).toList()) {
        holds(path, page, rule.name(), missing);
        holds(path, page, rule.summary(), missing);
        holds(path, page, "Source: " + rule.source() + ". Since " + rule.since(), missing);
        for (RuleText.Comparison comparison : rule.comparisons()) {
          Parameter parameter = SOURCE.parameters().get(comparison.parameter());
          holds(path, page, parameter.text(), missing);
          holds(path, page, parameter.source(), missing);
        }
      }
    }
    assertEquals(List.of(), missing);
  }

  @Test
  void every_sign_and_every_adjustment_has_a_page_with_what_the_catalog_says() {
    List<String> missing = new ArrayList<>();
    for (var sign : SOURCE.catalog().signs().values()) {
      String path = "/rules/signs/" + sign.id();
      String page = page(path);
      List.of(sign.ask(), sign.check(), "Source: " + sign.source())
          .forEach(text -> holds(path, page, text, missing));
      holds(path, page, sign.isNot(), missing);
      if (sign.redFlag() && !page.contains("Read first: <a href=\"/rules/")) {
        missing.add(path + ": a caution");
      }
      holds(path, page, sign.amount(), missing);
      sign.phrases().forEach(text -> holds(path, page, text, missing));
      if (sign.degrees() != null) {
        sign.degrees().values().forEach(text -> holds(path, page, text, missing));
      }
    }
    for (var change : SOURCE.catalog().adjustments().values()) {
      String path = "/rules/adjustments/" + change.id();
      String page = page(path);
      List.of(change.why(), change.check(), change.effort(), change.undo(), change.source())
          .forEach(text -> holds(path, page, text, missing));
      if (change.declineIf() != null) {
        change.declineIf().forEach(text -> holds(path, page, text, missing));
      }
      assertFalse(page.contains("{amount}"), path);
    }
    assertEquals(List.of(), missing);
  }

  @Test
  void every_link_from_the_index_on_leads_somewhere_on_this_service() {
    Map<String, Set<String>> anchors = new HashMap<>();
    Set<String> wanted = new HashSet<>();
    Deque<String> todo = new ArrayDeque<>(List.of("/rules"));
    List<String> broken = new ArrayList<>();
    while (!todo.isEmpty()) {
      String path = todo.remove();
      if (anchors.containsKey(path)) {
        continue;
      }
      Response response = get(path);
      if (response.statusCode() != 200) {
        broken.add(path + " is " + response.statusCode());
      }
      String page = response.asString();
      anchors.put(path, new HashSet<>(ID.matcher(page).results().map(m -> m.group(1)).toList()));
      if (!response.contentType().startsWith("text/html")) {
        continue;
      }
      for (String link : LINK.matcher(page).results().map(m -> m.group(1)).toList()) {
        String full = link.startsWith("#") ? path + link : link;
        if (!full.startsWith("/") || full.startsWith("//")) {
          broken.add(path + " leads to " + link);
          continue;
        }
        wanted.add(full);
        todo.add(full.split("#")[0]);
      }
    }
    for (String link : wanted) {
      String[] parts = link.split("#");
      if (parts.length == 2 && !anchors.get(parts[0]).contains(parts[1])) {
        broken.add(link + " has no such place");
      }
    }
    assertEquals(List.of(), broken);
    assertTrue(
        anchors.size()
            > SOURCE.pages().size()
                + SOURCE.catalog().signs().size()
                + SOURCE.catalog().adjustments().size(),
        "pages no link leads to");
  }

  @Test
  void no_page_needs_anything_from_elsewhere() {
    for (String path : List.of("/rules", "/rules/band-too-long", "/problems/failed")) {
      // Its script is a separate file, since inline scripts are not allowed (PageHeadersTest).
      String page = page(path).replace("src=\"/rules/find.js\"", "");
      assertFalse(page.matches("(?s).*(\\bsrc=|@import|url\\(|<link).*"), path);
      assertFalse(page.replace("http://www.w3.org/2000/svg", "").contains("://"), path);
    }
  }

  @Test
  void an_everyday_phrase_finds_its_sign_without_any_script() {
    String page = page("/rules?q=Creeps UP");
    assertTrue(page.contains("/rules/signs/band-rides-up-at-the-back"));
    assertFalse(page.contains("/rules/signs/straps-slip-off\""));
    assertTrue(page("/rules?q=xyzzy").contains("<p id=\"nothing\" role=\"status\">"));
    assertTrue(page("/rules").contains("<p id=\"nothing\" role=\"status\" hidden>"));
  }

  @Test
  void a_hostile_question_stays_text() {
    String hostile = "\"><script>alert(1)</script>'{q}";
    String page =
        given()
            .accept("text/html")
            .queryParam("q", hostile)
            .get("/rules")
            .then()
            .extract()
            .asString();
    assertFalse(page.contains("<script>alert"), page);
    assertTrue(page.contains("value=\"" + escaped(hostile) + "\""), page);
  }

  @Test
  void the_drawing_is_well_formed_and_can_be_read_aloud() throws Exception {
    Response response = given().get("/rules/garment.svg");
    assertTrue(response.contentType().startsWith("image/svg+xml"), response.contentType());
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    Document svg =
        factory.newDocumentBuilder().parse(new ByteArrayInputStream(response.asByteArray()));
    String namespace = "http://www.w3.org/2000/svg"; // SVG 1.1, section 1.3
    assertEquals(namespace, svg.getDocumentElement().getNamespaceURI());
    assertEquals(3, svg.getElementsByTagNameNS(namespace, "title").getLength());
    assertEquals(3, svg.getElementsByTagNameNS(namespace, "desc").getLength());
    assertTrue(response.asString().contains("currentColor"));
  }

  @Test
  void a_name_without_a_page_is_not_found() {
    for (String path :
        List.of("/rules/signs/none", "/rules/adjustments/none", "/problems/none", "/rules/none")) {
      given().get(path).then().statusCode(404).body("type", equalTo("/problems/not-found"));
      get(path).then().statusCode(404).body("html.head.title", startsWith("This page is not here"));
    }
  }

  @Test
  void the_type_of_every_problem_leads_to_what_it_means_and_what_to_do() {
    List<Response> refusals =
        List.of(
            given().contentType("application/json").body("{").post("/v1/fittings"),
            given().contentType("application/json").body("{}").post("/v1/fittings"),
            given().get("/nowhere"),
            given().get("/v1/fittings"),
            given().accept("image/png").get("/v1/signs"),
            given().contentType("application/json").body("{}").post("/v1/fittings?length=medium"),
            given().contentType("text/plain").body("x").post("/v1/fittings"),
            given()
                .contentType("application/json")
                .body(" ".repeat(256 * 1024 + 1))
                .post("/v1/fittings"));
    for (Response refusal : refusals) {
      String type = refusal.path("type");
      String title = refusal.path("title");
      assertTrue(page(type).contains("<h1>" + escaped(title) + "</h1>"), type);
      String plain = given().accept("text/plain").get(type).asString();
      int status = refusal.path("status");
      assertTrue(plain.startsWith(title + " (status " + status + ")"), plain);
    }
    for (ProblemKind kind : ProblemKind.all()) {
      String page = page("/problems/" + kind.kind());
      kind.remedy().forEach(one -> assertTrue(page.contains(escaped(one)), one));
    }
  }

  @Test
  void a_question_in_everyday_words_finds_the_sign_that_is_meant() {
    String page = asked("band creeps up");

    assertTrue(page.contains("<h2 id=\"meant\">"), page);
    assertTrue(page.contains("href=\"/rules/signs/band-rides-up-at-the-back\""), page);
  }

  @Test
  void small_words_in_a_question_to_the_book_keep_nothing_from_being_found() {
    assertTrue(asked("the neckline of it").contains("/rules/signs/"));
  }

  @Test
  void words_that_mean_nothing_of_the_book_find_nothing_and_are_shown_as_text() {
    String page = asked("<b>xyzzy");

    assertTrue(page.contains("Nothing in the rule book"), page);
    assertTrue(page.contains("value=\"&lt;b&gt;xyzzy\""), page);
    assertFalse(page.contains("/rules/signs/"), page);
  }

  private static String asked(String question) {
    return given().accept("text/html").queryParam("q", question).get("/rules").asString();
  }
}
