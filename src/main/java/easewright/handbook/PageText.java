package easewright.handbook;

import easewright.rulebook.RulePage;
import java.util.ArrayList;
import java.util.List;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * A page's Markdown split into its opening and its tried cases, each with its introduction. HTML in
 * it is escaped and link addresses are checked, so a page cannot contain a script.
 *
 * @param opening the prose before the first case's heading, HTML without the page's title
 * @param blocks the rest in order
 */
public record PageText(String opening, List<Block> blocks) {
  private static final Parser MARKDOWN = Parser.builder().build();
  private static final HtmlRenderer HTML =
      HtmlRenderer.builder().escapeHtml(true).sanitizeUrls(true).build();

  /**
   * Prose, or a tried case.
   *
   * @param html the prose; null for a case
   * @param tried the case; null for prose
   */
  public record Block(String html, TriedCase tried) {}

  static PageText of(RulePage page, Links links) {
    StringBuilder opening = new StringBuilder();
    List<Block> blocks = new ArrayList<>();
    boolean opened = false;
    int cases = 0;
    for (Node node = MARKDOWN.parse(page.markdown()).getFirstChild();
        node != null;
        node = node.getNext()) {
      if (node instanceof Heading heading && heading.getLevel() == 1) {
        continue;
      }
      opened |= node instanceof Heading || isCase(node);
      if (isCase(node)) {
        blocks.add(new Block(null, TriedCase.of(page.cases().get(cases++), links)));
      } else if (opened) {
        blocks.add(new Block(lower(node), null));
      } else {
        opening.append(HTML.render(node));
      }
    }
    return new PageText(opening.toString(), blocks);
  }

  /** Headings are one level lower here, below "Tried cases". */
  private static String lower(Node node) {
    if (node instanceof Heading heading) {
      heading.setLevel(Math.min(6, heading.getLevel() + 1));
    }
    return HTML.render(node);
  }

  private static boolean isCase(Node node) {
    return node instanceof FencedCodeBlock fence
        && fence.getInfo() != null
        && fence.getInfo().matches("yaml \\w+");
  }
}
