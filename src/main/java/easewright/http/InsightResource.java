package easewright.http;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.access.ClinicDoor;
import easewright.answering.InsightService;
import easewright.clinic.Insight;
import easewright.saying.BarPlot;
import easewright.saying.InsightNotes.InsightNote;
import easewright.saying.InsightTable;
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

/** Recurring causes and signs in a clinic: as counts, a table, or a drawing. */
@Path("/v1/clinics/{clinic}/insight")
@Blocking
public class InsightResource {
  private static final String TABLE = "text/csv;charset=UTF-8;qs=0.9";
  private static final String DRAWING = "image/svg+xml;qs=0.8";

  private final ClinicDoor door;
  private final InsightService insights;

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

  InsightResource(ClinicDoor door, InsightService insights) {
    this.door = door;
    this.insights = insights;
  }

  private InsightNote asked() {
    return insights.of(
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
    return InsightTable.of(asked());
  }

  @GET
  @Produces(DRAWING)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public String svg() {
    return BarPlot.drawing(asked());
  }
}
