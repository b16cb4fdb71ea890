package easewright.saying;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.RuleBookService;
import easewright.diagnosis.Answer;
import easewright.diagnosis.RandomFittings;
import easewright.http.Examples;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.text.TextContentRenderer;
import org.junit.jupiter.api.Test;

/**
 * Replies ready to post: short ones for every case of the book, every example of the contract and
 * many random fittings. Markdown is read by an independent implementation of CommonMark 0.31.
 */
@QuarkusTest
class RepliesTest {
  private static final String SITE = "https://fit.example";
  private static final String LONG_NAME = "a ".repeat(39) + "b";
  private static final int WORDS = 120;

  @Inject RuleBookService rules;

  private Stream<JsonNode> requests() throws IOException {
    return Stream.of(
            rules.edition().book().source().pages().values().stream()
                .flatMap(page -> page.cases().stream())
                .map(one -> one.given())
                .filter(given -> !given.isEmpty()),
            Examples.all().stream()
                .filter(one -> one.path().equals("/v1/fittings") && one.status() == 200)
                .map(RepliesTest::request),
            RandomFittings.some(400).stream().map(JsonNode.class::cast),
            RandomFittings.some(200).stream().map(this::inDanger))
        .flatMap(some -> some);
  }

  private static JsonNode request(Examples.Example example) {
    try {
      return new ObjectMapper().readTree(example.request());
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** The same fitting with every reason for caution at once. */
  private ObjectNode inDanger(ObjectNode given) {
    ObjectNode more = given.deepCopy();
    more.remove("signs");
    rules.edition().book().catalog().signs().values().stream()
        .filter(sign -> sign.redFlag())
        .forEach(sign -> more.withArray("signs").addObject().put("sign", sign.id()));
    ObjectNode about = more.withObject("/circumstances");
    Stream.of("nursing", "pregnant", "operatedRecently", "implantOrExpander", "growing")
        .forEach(one -> about.put(one, true));
    Stream.of("sleepingInIt", "wearingItAllDay", "latexSensitive")
        .forEach(one -> about.put(one, true));
    return more;
  }

  private static List<String> words(String text) {
    return Arrays.stream(text.strip().split("\\s+")).toList();
  }

  /** Letters and digits only, so that a format's markup and URLs don't count. */
  private static List<String> plainWords(String text) {
    String plain = text.replaceAll("https?://\\S+", " ").replaceAll("[^\\p{L}\\p{N}]+", " ");
    return words(plain);
  }

  private static String shown(String page) {
    return page.substring(page.indexOf("<article"), page.indexOf("</article>"))
        .replaceAll("(?s)<svg class=\"garment marked\".*</svg>", " ")
        .replaceAll("</?(span|strong|em|a)[^>]*>", "")
        .replaceAll("<[^>]+>", " ")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }

  private static List<String> links(Node document) {
    List<String> links = new ArrayList<>();
    document.accept(
        new AbstractVisitor() {
          @Override
          public void visit(HtmlInline html) {
            links.add(html.getLiteral());
          }

          @Override
          public void visit(HtmlBlock html) {
            links.add(html.getLiteral());
          }

          @Override
          public void visit(Image image) {
            links.add("image " + image.getDestination());
          }

          @Override
          public void visit(Link link) {
            links.add(link.getDestination());
          }
        });
    return links;
  }

  @Test
  void a_short_reply_is_short_and_the_same_in_every_form() throws IOException {
    List<Integer> lengths = new ArrayList<>();
    requests()
        .forEach(
            given -> {
              Answer answer = rules.edition().answer(given);
              String text = Replies.text(answer, ReplyLength.SHORT, SITE);
              String post = Replies.markdown(answer, ReplyLength.SHORT, SITE);
              String page =
                  Replies.html(answer, ReplyLength.SHORT, SITE, family -> Optional.empty());
              for (String form : List.of(text, post, shown(page))) {
                assertTrue(words(form).size() < WORDS, () -> given + "\n" + form);
              }
              lengths.add(words(text).size());
              Node document = Parser.builder().build().parse(post);
              String read = TextContentRenderer.builder().build().render(document);
              assertEquals(plainWords(text), plainWords(read), given::toString);
              List<String> heading =
                  List.of((answer.isDanger() ? "Before the fit" : "What to change").split(" "));
              List<String> onPage = plainWords(shown(page));
              assertEquals(heading, onPage.subList(0, 3));
              assertEquals(plainWords(text), onPage.subList(3, onPage.size()), given::toString);
              assertEquals(List.of(), links(document), given::toString);
              assertFalse(text.contains("NOT_FOUND") || text.contains("null"), text);
            });
    assertTrue(lengths.stream().anyMatch(length -> length > 95), "none was near the limit");
  }

  @Test
  void every_reason_for_caution_and_a_pattern_with_endless_names_still_make_a_short_reply()
      throws IOException {
    ObjectNode sheet =
        (ObjectNode)
            new ObjectMapper().readTree(given().get("/v1/pattern-sheets/quillmere-top").asString());
    sheet.path("pieces").forEach(piece -> ((ObjectNode) piece).put("name", LONG_NAME));
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    request.putObject("body").put("bust", "94 cm").put("underbust", "77 cm");
    request.putObject("pattern").set("inline", sheet);
    request.put("sizeCut", "80C");
    request.putArray("signs").addObject().put("sign", "band-rides-up-at-the-back");
    for (ObjectNode one : List.of(request, inDanger(request))) {
      String text = Replies.text(rules.edition().answer(one), ReplyLength.SHORT, SITE);
      assertTrue(words(text).size() < WORDS, text);
    }
  }

  @Test
  void a_hostile_text_stays_text_in_every_form() {
    String hostile = "<b>x</b> [y](http://z.example) **q**\n> w";
    Answer answer = SampleAnswer.with(hostile);
    String text = Replies.text(answer, ReplyLength.SHORT, SITE);
    assertTrue(text.contains(hostile.replace('\n', ' ')), text);
    String page = Replies.html(answer, ReplyLength.SHORT, SITE, family -> Optional.empty());
    assertFalse(page.contains("<b>"), page);
    Node post = Parser.builder().build().parse(Replies.markdown(answer, ReplyLength.SHORT, SITE));
    assertEquals(List.of(), links(post));
  }

  private static final String ONE_SIGN =
      "{\"signs\": [{\"sign\": \"straps-slack-at-their-shortest\"}]}";

  private static Response post(String accept, String length) {
    var request = given().contentType("application/json").accept(accept).body(ONE_SIGN);
    return (length == null ? request : request.queryParam("length", length))
        .header("Host", "localhost:81")
        .post("/v1/fittings");
  }

  @Test
  void plain_text_is_short_and_the_other_formats_long_by_default() {
    for (String form : List.of("text/plain", "text/markdown", "text/html")) {
      int brief = post(form, "short").asString().length();
      int whole = post(form, "long").asString().length();
      assertTrue(brief < whole, form);
      assertEquals(
          form.equals("text/plain") ? brief : whole, post(form, null).asString().length(), form);
      post(form, "short").then().header("Cache-Control", "no-store").contentType(form);
    }
    String plain = post("text/plain", "long").asString();
    assertFalse(plain.contains("**"), plain);
  }

  @Test
  void links_lead_to_this_machine_as_it_was_called() {
    post("text/markdown", "long").then().body(containsString("](http://localhost:81/rules/"));
    post("text/html", "long").then().body(containsString("href=\"http://localhost:81/rules/"));
  }

  @Test
  void another_length_is_a_problem_that_names_the_parameter_and_what_it_takes() {
    for (String form : List.of("text/plain", "text/markdown", "text/html", "application/json")) {
      post(form + ", application/problem+json;q=0.1", "medium")
          .then()
          .statusCode(400)
          .contentType("application/problem+json")
          .header("Cache-Control", "no-store")
          .body("type", equalTo("/problems/parameter"))
          .body("detail", containsString("\"length\""))
          .body("detail", containsString("length=short or length=long"));
    }
  }

  /** A place that was not said is asked for instead of a refusal: common practice. */
  @Test
  void what_is_said_without_a_place_is_answered_by_asking_where() {
    given()
        .contentType("application/json")
        .accept("text/plain")
        .body("{\"text\": \"it rides up\"}")
        .post("/v1/fittings")
        .then()
        .statusCode(200)
        .body(containsString("Where exactly do you see that: \"it rides up\"?"));
  }
}
