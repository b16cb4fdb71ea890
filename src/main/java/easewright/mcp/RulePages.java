package easewright.mcp;

import easewright.answering.FittingService;
import easewright.answering.HandbookService;
import easewright.saying.RulePageNote;
import easewright.saying.RulePageNote.RuleEntry;
import easewright.saying.SignNote;
import io.quarkiverse.mcp.server.CompleteResourceTemplate;
import io.quarkiverse.mcp.server.JsonRpcErrorCodes;
import io.quarkiverse.mcp.server.McpException;
import io.quarkiverse.mcp.server.Resource;
import io.quarkiverse.mcp.server.ResourceTemplate;
import io.quarkiverse.mcp.server.TextResourceContents;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Singleton;
import java.util.List;

/**
 * The active rule book as resources: a list of all pages, each page as written, and the signs that
 * can be reported.
 */
@Singleton
public class RulePages {
  private static final String ALL = "easewright://rules";
  private static final String SIGNS = "easewright://signs";
  private static final String MARKDOWN = "text/markdown";
  // A completion may have at most 100 values (2025-11-25, server/utilities).
  private static final int MOST_COMPLETIONS = 100;

  private final HandbookService rules;
  private final FittingService fittings;

  RulePages(HandbookService rules, FittingService fittings) {
    this.rules = rules;
    this.fittings = fittings;
  }

  @CheckedTemplate(basePath = "mcp")
  static final class Pages {
    private Pages() {}

    /** Markdown: {@code rules.md}. */
    static native TemplateInstance rules(List<RuleEntry> pages, String address);

    /** Markdown: {@code rule.md}. */
    static native TemplateInstance rule(RulePageNote page);

    /** Markdown: {@code signs.md}. */
    static native TemplateInstance signs(List<SignNote> signs);
  }

  @Resource(
      uri = ALL,
      name = "rules",
      title = "The rule book",
      description = "Every page of the rule book in a line, with its address.",
      mimeType = MARKDOWN)
  TextResourceContents all() {
    return contents(ALL, Pages.rules(rules.pages(), ALL));
  }

  @Resource(
      uri = SIGNS,
      name = "signs",
      title = "The signs",
      description = "Every sign a fitting can report: its id, its name, and the question to ask.",
      mimeType = MARKDOWN)
  TextResourceContents allSigns() {
    return contents(SIGNS, Pages.signs(fittings.signs()));
  }

  @ResourceTemplate(
      uriTemplate = ALL + "/{id}",
      name = "rule",
      title = "A page of the rule book",
      description = "What its rules say, why, where they stay silent, and the cases that prove it.",
      mimeType = MARKDOWN)
  TextResourceContents page(String id) {
    String uri = ALL + "/" + id;
    return rules
        .page(id)
        .map(page -> contents(uri, Pages.rule(page)))
        .orElseThrow(
            () ->
                new McpException(
                    "Resource not found: " + uri, JsonRpcErrorCodes.RESOURCE_NOT_FOUND));
  }

  @CompleteResourceTemplate("rule")
  List<String> ids(String id) {
    return rules.pages().stream()
        .map(RuleEntry::id)
        .filter(known -> known.contains(id))
        .sorted()
        .limit(MOST_COMPLETIONS)
        .toList();
  }

  private static TextResourceContents contents(String uri, TemplateInstance page) {
    return new TextResourceContents(uri, page.render(), MARKDOWN);
  }
}
