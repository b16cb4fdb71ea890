package easewright.desk;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.answering.RoundReader;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Key;
import easewright.clinic.Role;
import easewright.request.RequestJson;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/**
 * Texts from a wearer or the maker of a sheet remain plain text on every page and in every export
 * (OWASP Cross Site Scripting Prevention and CSV Injection pages; CommonMark 0.31 for links, images
 * and HTML in Markdown).
 */
@QuarkusTest
class HostileTextsTest {
  /** Each has an effect somewhere if it is interpreted as more than text. */
  private static final List<String> HOSTILE =
      List.of(
          "<script>zq7()</script>",
          "\"><img src=x onerror=zq7()>",
          "'onmouseover='zq7()",
          "</textarea></title><svg/onload=zq7()>",
          "{site.zq7}{#if 1}{cdi:zq7}{/if}",
          "![zq7](https://zq7.example/a.png) [b](javascript:zq7())",
          "<https://zq7.example> https://zq7.example www.zq7.example",
          "=HYPERLINK(\"http://zq7.example\")",
          "@SUM(1+1)*zq7",
          "&lt;b&gt; &#60;i>zq7",
          "]]><!--zq7");

  @Inject ClinicStore store;
  @Inject RoundReader fittings;
  private Clinics.Opened clinic;
  private Caller organiser;
  private Key helper;
  private final List<String> pages = new ArrayList<>();

  @BeforeEach
  void stock() throws IOException {
    clinic = store.clinics().open(HOSTILE.get(0), HOSTILE.get(1), 90);
    organiser = store.keys().holder(clinic.key().text()).orElseThrow();
    helper = store.keys().issue(organiser, Role.HELPER, HOSTILE.get(2));
    String home = "/desk/clinics/" + organiser.clinic();
    pages.addAll(List.of(home, home + "/insight", home + "/insight/drawing.svg"));
    pages.addAll(List.of(home + "/organise", home + "/organise/audit", home + "/organise/delete"));
    for (String text : HOSTILE) {
      String id = store.cases().open(organiser, text).id();
      store.rounds().add(organiser, id, fittings.read(RequestJson.parse(round(text))));
      store.cases().note(organiser, id, text);
      Key link = store.keys().issueLink(organiser, id);
      String page = home + "/cases/" + id;
      pages.addAll(List.of(page, page + "/round", page + "/delete"));
      pages.add("/desk/wearer/" + link.text());
      pages.add("/desk/wearer/" + link.text() + "/delete");
    }
  }

  /** A round with a sheet that contains the text wherever a sheet may contain one. */
  private static byte[] round(String text) throws IOException {
    ObjectNode request = new ObjectMapper().createObjectNode();
    request.put("text", "The band rides up at the back. " + text);
    request.putObject("body").put("bust", "94 cm").put("underbust", "77 cm");
    request.putObject("pattern").set("inline", sheet(text));
    return request.toString().getBytes(UTF_8);
  }

  private static ObjectNode sheet(String text) throws IOException {
    ObjectNode sheet =
        (ObjectNode)
            new YAMLMapper()
                .readTree(Files.readString(Path.of("openapi/examples/small-sheet.yaml")));
    sheet.put("name", text);
    sheet.put("summary", text);
    sheet.put("construction", text);
    sheet.path("pieces").forEach(piece -> ((ObjectNode) piece).put("name", text));
    sheet.path("trims").forEach(trim -> ((ObjectNode) trim).put("name", text));
    return sheet;
  }

  private Response get(String path) {
    return given()
        .redirects()
        .follow(false)
        .accept("text/html,image/svg+xml,text/csv,application/json")
        .cookie("easewright-key", clinic.key().text())
        .get(path);
  }

  @Test
  void no_page_of_a_clinic_takes_a_text_for_more() throws Exception {
    int seen = 0;
    for (String path : pages) {
      Response page = get(path);
      assertEquals(200, page.statusCode(), path);
      stays(page.asString(), path);
      seen += page.asString().contains("zq7") ? 1 : 0;
      assertFalse(page.header("Content-Security-Policy").contains("script-src 'unsafe"), path);
      if (page.contentType().startsWith("image/svg")) {
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(page.asString())));
      }
    }
    assertTrue(seen > 4 * HOSTILE.size(), seen + " of " + pages.size() + " pages show a text");
  }

  /** Text with an HTML special character must never appear unescaped. */
  private static void stays(String html, String where) {
    for (String text : HOSTILE) {
      if (Stream.of("<", "\"", "'", "&").anyMatch(text::contains)) {
        assertFalse(html.contains(text), () -> where + " holds " + text);
      }
    }
    for (String active :
        List.of(
            "<script>zq7", "<img src=x", "<svg/onload", "href=\"javascript:", "=\"https://zq7")) {
      assertFalse(html.contains(active), () -> where + " holds " + active);
    }
    assertFalse(html.contains("{cdi:zq7}{/if}") != html.contains("{#if 1}"), where);
  }

  @Test
  void no_answer_to_a_sheet_full_of_such_texts_does() throws IOException {
    for (String text : HOSTILE) {
      for (String path : List.of("/v1/fittings", "/v1/size-checks", "/v1/cut-plans")) {
        // The layout search is slow: for plans one text of each kind is enough.
        if (path.endsWith("cut-plans") && HOSTILE.indexOf(text) % 5 != 0) {
          continue;
        }
        for (String form : List.of("text/html", "text/markdown", "text/plain")) {
          Response answer = answer(path, form, text);
          if (answer.statusCode() == 406) {
            continue;
          }
          assertEquals(200, answer.statusCode(), path + " " + answer.asString());
          String said = answer.asString();
          if (form.equals("text/html")) {
            stays(said, path + " about " + text);
          } else if (form.equals("text/markdown")) {
            staysInMarkdown(said);
          } else {
            assertFalse(said.chars().anyMatch(c -> c < ' ' && c != '\n'), said);
          }
        }
      }
    }
  }

  private static Response answer(String path, String form, String text) throws IOException {
    ObjectNode request = new ObjectMapper().createObjectNode();
    request.putObject("pattern").set("inline", sheet(text));
    if (path.endsWith("cut-plans")) {
      request.put("size", "2");
      request.putObject("cloths").putObject("main").put("width", "150 cm").put("stretch", "both");
    } else {
      request.putObject("body").put("bust", "94 cm").put("underbust", "77 cm");
    }
    return given()
        .contentType("application/json")
        .accept(form)
        .body(request.toString().getBytes(UTF_8))
        .post(path);
  }

  private static void staysInMarkdown(String markdown) {
    Node read = Parser.builder().build().parse(markdown);
    read.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Link link) {
            assertFalse(link.getDestination().contains("zq7"), markdown);
            visitChildren(link);
          }

          @Override
          public void visit(Image image) {
            assertFalse(image.getDestination().contains("zq7"), markdown);
          }

          @Override
          public void visit(HtmlInline html) {
            assertFalse(html.getLiteral().contains("zq7"), markdown);
          }

          @Override
          public void visit(HtmlBlock html) {
            assertFalse(html.getLiteral().contains("zq7"), markdown);
          }
        });
  }

  @Test
  void exports_are_downloads_with_fixed_file_names() {
    String home = "/desk/clinics/" + organiser.clinic();
    for (String path :
        List.of(home + "/organise/export", home + "/insight/table.csv", home + "/insight")) {
      Response export = get(path);
      assertEquals(200, export.statusCode(), path);
      assertEquals("nosniff", export.header("X-Content-Type-Options"));
      String kept = export.header("Content-Disposition");
      assertTrue(kept == null || kept.matches("attachment; filename=\"[a-z.-]+\""), kept);
    }
    for (String line : get(home + "/insight/table.csv").asString().split("\r\n")) {
      for (String cell : line.split(",")) {
        assertFalse(cell.matches("\"?[=+@-].*"), line);
      }
    }
  }

  @Test
  void a_name_that_turns_the_direction_of_writing_is_refused() {
    given()
        .contentType("application/json")
        .header("Authorization", "Bearer " + helper.text())
        .body("{\"nickname\": \"Wren\u202Ena\"}".getBytes(UTF_8))
        .post("/v1/clinics/" + organiser.clinic() + "/cases")
        .then()
        .statusCode(400);
  }
}
