package easewright.saying;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.renderer.text.TextContentRenderer;
import org.junit.jupiter.api.Test;

/** Markdown is read by an independent implementation of CommonMark 0.31. */
@QuarkusTest
class AnswerPagesTest {
  private static final String HOSTILE =
      "<script>alert(1)</script> ![x](javascript:1) [y](http://z.example) **b** `c`\n# d & www.e.f";

  private static final String SITE = "https://fit.example";

  private static String post(String text) {
    return Replies.markdown(SampleAnswer.with(text), ReplyLength.LONG, SITE);
  }

  @Test
  void the_short_answer_comes_before_the_details_in_the_order_a_reader_needs() {
    String post = post("80C");
    List<String> order =
        List.of(
            "For those who want to know more",
            "Please take care",
            "Most likely:** band too long.",
            "Change one thing:** Take the band in by 3.2 cm.",
            "Where:** side seam of 80C, 3.2 cm at each edge.",
            "Then check:** Raise both arms.",
            "It might also be:** elastic too weak.",
            "What to tell us next:** Does it drop?",
            "1. Pin 80C",
            "2. Sew.",
            "band strain: 2 %; 770/755 − 1");
    int at = -1;
    for (String part : order) {
      int next = post.indexOf(part, at + 1);
      assertTrue(next > at, () -> "not in its turn: " + part + "\n" + post);
      at = next;
    }
    assertFalse(post.contains("\n\n\n\n"), post);
  }

  @Test
  void a_hostile_text_stays_text_in_markdown() {
    Node document = Parser.builder().build().parse(post(HOSTILE));
    List<String> made = new ArrayList<>();
    document.accept(
        new AbstractVisitor() {
          @Override
          public void visit(HtmlInline html) {
            made.add(html.getLiteral());
          }

          @Override
          public void visit(HtmlBlock html) {
            made.add(html.getLiteral());
          }

          @Override
          public void visit(Image image) {
            made.add(image.getDestination());
          }

          @Override
          public void visit(Link link) {
            made.add(link.getDestination());
          }
        });
    assertEquals(List.of(SITE + "/drawings/side-seam.svg", SITE + "/rules/band"), made);
    String shown = TextContentRenderer.builder().build().render(document);
    assertTrue(shown.contains(HOSTILE.replace('\n', ' ')), shown);
  }

  @Test
  void markdown_of_any_text_renders_as_exactly_that_text() {
    for (String text : List.of("a*b*c", "_x_", "~~y~~", "1. z", "&lt;", "\\*", "|a|b|", "@you")) {
      String html =
          HtmlRenderer.builder()
              .build()
              .render(Parser.builder().build().parse("x " + MarkdownText.escape(text)));
      String expected = text.replace("&", "&amp;").replace("<", "&lt;");
      assertEquals("<p>x " + expected + "</p>\n", html);
    }
    assertFalse(MarkdownText.escape("see http://a.example or www.b.example").contains("http:/"));
    assertFalse(MarkdownText.escape("see http://a.example or www.b.example").contains("www."));
  }

  @Test
  void a_hostile_text_stays_text_in_a_page() {
    String page =
        Replies.html(
            SampleAnswer.with(HOSTILE), ReplyLength.LONG, SITE, family -> Optional.empty());
    assertFalse(page.contains("<script"), page);
    assertTrue(page.contains("&lt;script&gt;"), page);
  }

  @Test
  void a_page_needs_nothing_from_elsewhere() {
    String page =
        Replies.html(SampleAnswer.with("80C"), ReplyLength.LONG, "", family -> Optional.empty());
    String shown = page.replace("http://www.w3.org/2000/svg", "the name of a vocabulary");
    assertFalse(shown.matches("(?s).*(src=|@import|url\\(|https?://).*"), page);
    assertTrue(page.startsWith("<!DOCTYPE html>"), page);
    assertTrue(page.contains("<html lang=\"en\">"), page);
    assertTrue(page.contains("Most likely: band too long"), page);
  }

  @Test
  void a_page_says_things_in_the_order_of_the_post_with_every_plus_minus_kept_together() {
    String page =
        Replies.html(SampleAnswer.with("80C"), ReplyLength.LONG, "", family -> Optional.empty());
    String shown = page.replaceAll("(?s)<style>.*?</style>|<[^>]+>", "");
    List<String> order =
        List.of(
            "For those who want to know more",
            "Please take care",
            "Most likely: band too long (73 %)",
            "Change one thing",
            "Take the band in by 3.2 cm.",
            "side seam of 80C, 3.2 cm at each edge",
            "Raise both arms.",
            "It might also be: elastic too weak (20 %).",
            "What to tell us next: Does it drop?",
            "How I got there",
            "94.0 cm ± 10 mm",
            "Pin 80C",
            "band strain: 2 %; 770/755 − 1");
    int at = -1;
    for (String part : order) {
      int next = shown.indexOf(part, at + 1);
      assertTrue(next > at, () -> "not in its turn: " + part + "\n" + shown);
      at = next;
    }
    assertTrue(page.contains("<span class=\"number\">94.0 cm ± 10 mm</span>"), page);
    assertTrue(page.contains("Up to <span class=\"number\">4 mm</span> more or less"), page);
  }
}
