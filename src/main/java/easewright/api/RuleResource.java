package easewright.api;

import easewright.rulebook.RulePage;
import easewright.rulebook.RuleText;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import java.util.Comparator;
import java.util.List;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/** The rule book to read: the very files that answers are made with. */
@Path("/rules")
@NonBlocking
public class RuleResource {
  private static final String HTML = "text/html;charset=UTF-8";
  private static final String JSON = "application/json;qs=0.9";

  private final InForce rules;

  RuleResource(InForce rules) {
    this.rules = rules;
  }

  /** A page in a line. */
  public record RuleEntry(String id, String title, String topic, String page) {
    static RuleEntry of(RulePage page) {
      return new RuleEntry(page.id(), page.title(), page.topic(), "/rules/" + page.id());
    }
  }

  /** A page with its rules. */
  public record RulePageNote(
      String id, String title, String topic, String text, List<RuleNote> rules) {}

  /** A rule as written. */
  public record RuleNote(String name, String summary, String source, String since, String text) {
    static RuleNote of(RuleText rule) {
      return new RuleNote(rule.name(), rule.summary(), rule.source(), rule.since(), rule.body());
    }
  }

  @CheckedTemplate(basePath = "rules")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance index(List<RuleEntry> pages, String version);

    static native TemplateInstance page(RulePageNote page, String html);
  }

  @GET
  @Produces(HTML)
  public String indexPage() {
    return Pages.index(index(), rules.now().book().source().version()).render();
  }

  @GET
  @Produces(JSON)
  public List<RuleEntry> index() {
    return rules.now().book().source().pages().values().stream()
        .sorted(Comparator.comparing(RulePage::topic).thenComparing(RulePage::title))
        .map(RuleEntry::of)
        .toList();
  }

  @GET
  @Path("/{id}")
  @Produces(HTML)
  public String rulePage(@PathParam("id") String id) {
    RulePageNote page = rule(id);
    String html =
        HtmlRenderer.builder().build().render(Parser.builder().build().parse(page.text()));
    return Pages.page(page, html).render();
  }

  @GET
  @Path("/{id}")
  @Produces(JSON)
  public RulePageNote rule(@PathParam("id") String id) {
    RulePage page = rules.now().book().source().pages().get(id);
    if (page == null) {
      throw new NotFoundException();
    }
    return new RulePageNote(
        page.id(),
        page.title(),
        page.topic(),
        page.markdown(),
        rules.now().book().source().rules().stream()
            .filter(rule -> rule.file().equals(id))
            .map(RuleNote::of)
            .toList());
  }
}
