package easewright.api;

import easewright.measure.Length;
import easewright.pattern.PatternSheets;
import easewright.plan.CannotBeCut;
import easewright.plan.CutPlan;
import easewright.plan.CutPlanner;
import easewright.plan.CutRequest;
import easewright.rulebook.RuleBook;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.Locale;
import org.jboss.resteasy.reactive.ResponseHeader;

/** What to cut and to buy. Searching for a layout takes its time, so on a worker. */
@Path("/v1/cut-plans")
@Consumes(MediaType.APPLICATION_JSON)
public class CutPlanResource {
  private final InForce rules;
  private final PatternSheets sheets;
  private volatile Edition edition;

  CutPlanResource(InForce rules, PatternSheets sheets) {
    this.rules = rules;
    this.sheets = sheets;
  }

  private record Edition(RuleBook book, CutPlanner planner, CutPlanReader reader) {}

  @POST
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CutPlan json(byte[] body) {
    return plan(body);
  }

  @POST
  @Produces("text/markdown;charset=UTF-8;qs=0.9")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String markdown(byte[] body) {
    return CutPlanPages.list(plan(body)).render();
  }

  @POST
  @Produces("text/html;charset=UTF-8;qs=0.8")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String html(byte[] body) {
    return CutPlanPages.sheet(plan(body)).render();
  }

  private CutPlan plan(byte[] body) {
    Edition now = now();
    return rules.inTime(() -> plan(now, body));
  }

  private static CutPlan plan(Edition now, byte[] body) {
    CutRequest request = now.reader().read(RequestJson.parse(body));
    try {
      return now.planner().plan(request);
    } catch (CannotBeCut narrow) {
      throw refusal(narrow, request);
    }
  }

  private Edition now() {
    RuleBook book = rules.now().book();
    Edition known = edition;
    if (known == null || known.book() != book) {
      CutPlanner planner = new CutPlanner(book.source());
      known = new Edition(book, planner, new CutPlanReader(sheets, planner.adjustments()));
      edition = known;
    }
    return known;
  }

  private static FaultyRequest refusal(CannotBeCut narrow, CutRequest request) {
    Faults faults = new Faults();
    faults.impossible(
        "/cloths/" + narrow.cloth().name().toLowerCase(Locale.ROOT) + "/width",
        "The piece \"" + narrow.piece() + "\" does not fit on this cloth.",
        "As the cloth is laid it has to be at least "
            + Length.ofMm(Math.ceil(narrow.neededMm())).text(request.units())
            + " wide; a wider cloth or an open one may do.");
    return faults.refusal();
  }
}
