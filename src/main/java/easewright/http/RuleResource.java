package easewright.http;

import easewright.answering.HandbookService;
import easewright.answering.HandbookService.Meant;
import easewright.answering.RuleFolder;
import easewright.handbook.AdjustmentPage;
import easewright.handbook.GarmentDrawing;
import easewright.handbook.Handbook;
import easewright.handbook.HandbookIndex;
import easewright.handbook.RulesPage;
import easewright.handbook.SignPage;
import easewright.saying.RulePageNote;
import easewright.saying.RulePageNote.RuleEntry;
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
import java.util.List;

/** The rule book for readers: the same files that answers are made from. */
@Path("/rules")
@NonBlocking
@Unchanging
public class RuleResource {
  private static final String HTML = "text/html;charset=UTF-8";
  private static final String JSON = "application/json;qs=0.9";

  /** Maximum length of a search, characters. */
  private static final int MOST_ASKED = 200;

  private final HandbookService handbooks;

  RuleResource(HandbookService handbooks) {
    this.handbooks = handbooks;
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

  @GET
  @Produces(HTML)
  public String indexPage(@QueryParam("q") @DefaultValue("") String q) {
    Handbook book = handbooks.handbook();
    String asked = q.strip().substring(0, Math.min(q.strip().length(), MOST_ASKED));
    Meant meant = asked.isEmpty() ? Meant.NOTHING : handbooks.meant(asked);
    return Pages.index(
            asked.isEmpty() ? book.index() : book.index().matching(asked),
            book.index().signs(meant.surely()),
            book.index().signs(meant.perhaps()),
            asked,
            book.source().version(),
            handbooks.state(),
            book.garment(null).orElse(null))
        .render();
  }

  @GET
  @Path("/garment.svg")
  @Produces("image/svg+xml")
  public String garment(@QueryParam("family") String family) {
    return handbooks
        .handbook()
        .garment(family)
        .map(Pages::garment)
        .orElseThrow(NotFoundException::new)
        .render();
  }

  @GET
  @Path("/signs/{id}")
  @Produces(HTML)
  public String signPage(@PathParam("id") String id) {
    return handbooks
        .handbook()
        .sign(id)
        .map(Pages::sign)
        .orElseThrow(NotFoundException::new)
        .render();
  }

  @GET
  @Path("/adjustments/{id}")
  @Produces(HTML)
  public String adjustmentPage(@PathParam("id") String id) {
    return handbooks
        .handbook()
        .adjustment(id)
        .map(Pages::adjustment)
        .orElseThrow(NotFoundException::new)
        .render();
  }

  @GET
  @Produces(JSON)
  public List<RuleEntry> index() {
    return handbooks.pages();
  }

  @GET
  @Path("/{id}")
  @Produces(HTML)
  public String rulePage(@PathParam("id") String id) {
    return handbooks
        .handbook()
        .rules(id)
        .map(Pages::page)
        .orElseThrow(NotFoundException::new)
        .render();
  }

  @GET
  @Path("/{id}")
  @Produces(JSON)
  public RulePageNote rule(@PathParam("id") String id) {
    return handbooks.page(id).orElseThrow(NotFoundException::new);
  }
}
