package easewright.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.handbook.TriedCase.Row;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.rulebook.RulePage.RuleCase;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Splitting of pages; Markdown follows CommonMark 0.31. */
class PageTextTest {
  private static final RuleBookSource SOURCE = RuleBookSource.read(Path.of("rules"));
  private static final Links LINKS = new Links(SOURCE);

  private static JsonNode yaml(String text) {
    try {
      return new YAMLMapper().readTree(text);
    } catch (JsonProcessingException broken) {
      throw new IllegalArgumentException(broken);
    }
  }

  @Test
  void every_case_of_every_page_is_shown_in_its_order_and_no_fence_is_left() {
    for (RulePage page : SOURCE.pages().values()) {
      PageText text = PageText.of(page, LINKS);
      List<String> kinds =
          text.blocks().stream()
              .filter(block -> block.tried() != null)
              .map(block -> block.tried().kind())
              .toList();
      assertEquals(page.cases().stream().map(RuleCase::kind).toList(), kinds, page.id());
      assertFalse(text.opening().isBlank(), page.id());
      for (PageText.Block block : text.blocks()) {
        assertFalse(block.html() != null && block.html().contains("<pre>"), page.id());
        if (block.tried() != null) {
          assertFalse(block.tried().given().isEmpty(), page.id());
          assertFalse(block.tried().then().isEmpty(), page.id());
        }
      }
    }
  }

  @Test
  void a_hostile_page_stays_text() {
    String markdown =
        "# T\n\n<script>x</script>\n\n[y](javascript:alert(1)) <b onclick=z>\n\n<hr>\n";
    String html =
        PageText.of(new RulePage("p", "band", "band/p.md", "T", markdown, List.of()), LINKS)
            .opening();
    assertFalse(html.contains("<script"), html);
    assertFalse(html.contains("<b"), html);
    assertFalse(html.contains("<hr"), html);
    assertFalse(html.contains("javascript:"), html);
    assertTrue(html.contains("&lt;script&gt;"), html);
  }

  @Test
  void a_case_reads_as_rows_with_its_names_linked() {
    RuleCase tried =
        new RuleCase(
            "speaks",
            "",
            1,
            yaml(
                """
                body: {underbust: 77 cm, bustPointWidth: 18 cm}
                cloth: {main: {around: {marked: 10 cm, stretched: 15 cm}}}
                signs:
                  - {sign: straps-dig-in, seen: absent, side: left}
                """),
            List.of(),
            yaml("advises: [take-in-the-band, let-out-the-band]\ntightening: none\n"));
    TriedCase read = TriedCase.of(tried, LINKS);
    assertEquals(
        List.of(
            new Row("body", new PageLink("underbust 77 cm, bust point width 18 cm", null), ""),
            new Row(
                "cloth", new PageLink("main (around (marked 10 cm, stretched 15 cm))", null), ""),
            new Row(
                "sign absent",
                new PageLink("straps dig in", "/rules/signs/straps-dig-in"),
                ", left")),
        read.given());
    assertEquals(
        List.of(
            new Row(
                "advises",
                new PageLink("take in the band", "/rules/adjustments/take-in-the-band"),
                ""),
            new Row(
                "advises",
                new PageLink("let out the band", "/rules/adjustments/let-out-the-band"),
                ""),
            new Row("tightening", new PageLink("none", null), "")),
        read.then());
  }
}
