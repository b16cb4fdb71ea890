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
 * What keeps coming back in a clinic, and what is likely a pattern's own fault. Its table and its
 * drawing are offered below the page, since the cookie that signs in goes no further.
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
   * @param oneIn in so many clinics chance alone brings anything as striking once
   */
  public record Fault(FaultNote note, BarPlot plot, long oneIn) {
    static Fault of(FaultNote note) {
      return new Fault(note, BarPlot.of(note), (long) Math.floor(1 / note.chance()));
    }

    /** Whether it is in all sizes of its pattern. */
    public boolean everywhere() {
      return note.sizes().size() == note.bySize().size();
    }
  }

  /** What the address asks for; an empty field of the form asks for nothing. */
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
      return new Insight.Asked(told(pattern), told(size), told(cloth), told(choice));
    }

    private static String told(String value) {
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

  /** To be kept, not shown: its style stands within, which our pages' rules of safety forbid. */
  @GET
  @Path("/drawing.svg")
  @Produces("image/svg+xml")
  @ResponseHeader(name = "Content-Disposition", value = "attachment; filename=\"insight.svg\"")
  public String drawing(@BeanParam Asked from) {
    return BarPlot.drawing(of(from));
  }
}
