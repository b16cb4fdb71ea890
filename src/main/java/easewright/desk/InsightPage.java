package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.answering.InsightService;
import easewright.clinic.Insight;
import easewright.saying.BarPlot;
import easewright.saying.InsightNotes.FaultNote;
import easewright.saying.InsightNotes.InsightNote;
import easewright.saying.InsightTable;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.jboss.resteasy.reactive.ResponseHeader;

/**
 * Recurring causes in a clinic, and likely faults of patterns. The table and the drawing are at
 * paths below the page, since the sign-in cookie is limited to the desk's path.
 */
@Path("/desk/clinics/{clinic}/insight")
@Produces(DeskResource.HTML)
@Blocking
public class InsightPage {
  private final SignedIn signedIn;
  private final InsightService insights;

  InsightPage(SignedIn signedIn, InsightService insights) {
    this.signedIn = signedIn;
    this.insights = insights;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance insight(
        ClinicViewer who, InsightNote insight, InsightFilter looked, List<Fault> faults);
  }

  /**
   * A common fault and its plot.
   *
   * @param oneIn chance alone causes anything as striking in one of this many clinics
   */
  public record Fault(FaultNote note, BarPlot plot, long oneIn) {
    static Fault of(FaultNote note) {
      return new Fault(note, BarPlot.of(note), (long) Math.floor(1 / note.chance()));
    }

    /** Whether it affects all sizes of its pattern. */
    public boolean everywhere() {
      return note.sizes().size() == note.bySize().size();
    }
  }

  /** The filter in the URL; an empty form field means no filter. */
  static final class Asked {
    @PathParam("clinic")
    String clinic;

    @QueryParam("pattern")
    String pattern;

    @QueryParam("size")
    String size;

    @QueryParam("cloth")
    String cloth;

    @QueryParam("choice")
    String choice;

    private Insight.Asked asked() {
      return new Insight.Asked(orNull(pattern), orNull(size), orNull(cloth), orNull(choice));
    }

    private static String orNull(String value) {
      return value == null || value.isBlank() ? null : value.strip();
    }
  }

  @GET
  public String page(@BeanParam Asked from) {
    ClinicViewer who = signedIn.enter(from.clinic, ORGANISER, HELPER);
    InsightNote insight = insights.of(who.caller(), from.asked());
    return Pages.insight(
            who,
            insight,
            new InsightFilter(insight.asked()),
            insight.faults().stream().map(Fault::of).toList())
        .render();
  }

  private InsightNote of(Asked from) {
    return insights.of(signedIn.enter(from.clinic, ORGANISER, HELPER).caller(), from.asked());
  }

  @GET
  @Path("/table.csv")
  @Produces("text/csv;charset=UTF-8")
  @ResponseHeader(name = "Content-Disposition", value = "attachment; filename=\"insight.csv\"")
  public String table(@BeanParam Asked from) {
    return InsightTable.of(of(from));
  }

  /** For download, not display: it has inline styles, which our pages' security policy forbids. */
  @GET
  @Path("/drawing.svg")
  @Produces("image/svg+xml")
  @ResponseHeader(name = "Content-Disposition", value = "attachment; filename=\"insight.svg\"")
  public String drawing(@BeanParam Asked from) {
    return BarPlot.drawing(of(from));
  }
}
