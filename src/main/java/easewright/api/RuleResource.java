package easewright.api;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.handbook.AdjustmentPage;
import easewright.handbook.GarmentDrawing;
import easewright.handbook.Handbook;
import easewright.handbook.HandbookIndex;
import easewright.handbook.RulesPage;
import easewright.handbook.SignPage;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.RulePage;
import easewright.rulebook.RuleText;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.NonBlocking;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import java.util.Comparator;
import java.util.List;

/** The rule book to read: the very files that answers are made with. */
@Path("/rules")
@NonBlocking
public class RuleResource {
  private static final String HTML = "text/html;charset=UTF-8";
  private static final String JSON = "application/json;qs=0.9";

  /** Longer than anybody's question to a book, characters. */
  private static final int MOST_ASKED = 200;

  private final InForce rules;
  private volatile Handbook handbook;

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

    static native TemplateInstance index(
        HandbookIndex index,
        List<HandbookIndex.Item> meant,
        List<HandbookIndex.Item> perhaps,
        String q,
        String version,
        RuleFolder.State state,
        GarmentDrawing drawing);

    static native TemplateInstance page(RulesPage page);

    static native TemplateInstance sign(SignPage page);

    static native TemplateInstance adjustment(AdjustmentPage page);

    static native TemplateInstance garment(GarmentDrawing drawing);
  }

  /** The handbook of the edition in force, arranged once for each edition. */
  private Handbook handbook() {
    RuleBookSource source = rules.now().book().source();
    Handbook current = handbook;
    if (current == null || current.source() != source) {
      current = new Handbook(source);
      handbook = current;
    }
    return current;
  }

  @GET
  @Produces(HTML)
  public String indexPage(@QueryParam("q") @DefaultValue("") String q) {
    Handbook book = handbook();
    String asked = q.strip().substring(0, Math.min(q.strip().length(), MOST_ASKED));
    Meant meant = asked.isEmpty() ? Meant.NOTHING : meant(asked);
    return Pages.index(
            asked.isEmpty() ? book.index() : book.index().matching(asked),
            book.index().signs(meant.surely()),
            book.index().signs(meant.perhaps()),
            asked,
            book.source().version(),
            rules.state(),
            GarmentDrawing.plainTop())
        .render();
  }

  /** Signs that everyday words mean, and those they may mean. */
  private record Meant(List<String> surely, List<String> perhaps) {
    static final Meant NOTHING = new Meant(List.of(), List.of());
  }

  /** Reads a question as a post is read: "creeps up" finds the band that rides up. */
  private Meant meant(String asked) {
    InForce.Edition edition = rules.now();
    IntakeAnswer read =
        rules.inTime(() -> edition.read(JsonNodeFactory.instance.objectNode().put("text", asked)));
    List<String> surely = read.fitting().path("signs").findValuesAsText("sign");
    return new Meant(
        surely,
        read.notUnderstood().stream()
            .flatMap(one -> one.perhaps().stream())
            .map(IntakeAnswer.PerhapsNote::sign)
            .filter(sign -> !surely.contains(sign))
            .toList());
  }

  @GET
  @Path("/garment.svg")
  @Produces("image/svg+xml")
  public String garment() {
    return Pages.garment(GarmentDrawing.plainTop()).render();
  }

  @GET
  @Path("/signs/{id}")
  @Produces(HTML)
  public String signPage(@PathParam("id") String id) {
    return handbook().sign(id).map(Pages::sign).orElseThrow(NotFoundException::new).render();
  }

  @GET
  @Path("/adjustments/{id}")
  @Produces(HTML)
  public String adjustmentPage(@PathParam("id") String id) {
    return handbook()
        .adjustment(id)
        .map(Pages::adjustment)
        .orElseThrow(NotFoundException::new)
        .render();
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
    return handbook().rules(id).map(Pages::page).orElseThrow(NotFoundException::new).render();
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
