package easewright.api;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.api.InsightNotes.InsightNote;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Insight;
import easewright.pattern.PatternSheets;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;

/** What keeps coming back in a clinic: counted, as a table, or drawn. */
@Path("/v1/clinics/{clinic}/insight")
@Blocking
public class InsightResource {
  private static final String TABLE = "text/csv;charset=UTF-8;qs=0.9";
  private static final String DRAWING = "image/svg+xml;qs=0.8";

  private final ClinicStore store;
  private final ClinicDoor door;
  private final InForce rules;
  private final PatternSheets sheets;

  @HeaderParam(HttpHeaders.AUTHORIZATION)
  String key;

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

  InsightResource(ClinicStore store, ClinicDoor door, InForce rules, PatternSheets sheets) {
    this.store = store;
    this.door = door;
    this.rules = rules;
    this.sheets = sheets;
  }

  /** The same for whoever has entered already. */
  public InsightNote of(Caller caller, Insight.Asked asked) {
    Insight insight = store.insights().of(caller, asked, sheets.shipped());
    return InsightNotes.of(insight, rules.now().book().catalog(), sheets.shipped());
  }

  /** Insight as a table. */
  public String table(InsightNote insight) {
    return InsightTable.of(insight);
  }

  /** Insight as a drawing to stand alone. */
  public String drawing(InsightNote insight) {
    return InsightPages.drawing(insight, BarPlot.ofCauses(insight)).render();
  }

  private InsightNote asked() {
    return of(
        door.enter(key, clinic, ORGANISER, HELPER),
        new Insight.Asked(pattern, size, cloth, choice));
  }

  @GET
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public InsightNote json() {
    return asked();
  }

  @GET
  @Produces(TABLE)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  @ResponseHeader(
      name = HttpHeaders.CONTENT_DISPOSITION,
      value = "attachment; filename=\"insight.csv\"")
  public String csv() {
    return table(asked());
  }

  @GET
  @Produces(DRAWING)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String svg() {
    return drawing(asked());
  }
}
