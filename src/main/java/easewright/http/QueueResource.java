package easewright.http;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.access.ClinicDoor;
import easewright.answering.CaseService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.request.RequestJson;
import easewright.saying.CaseNotes.GivenNote;
import easewright.saying.CaseNotes.QueueNote;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.jboss.resteasy.reactive.ResponseHeader;

/** Which case of a clinic to answer next, and one reply for many cases with the same question. */
@Path("/v1/clinics/{clinic}")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class QueueResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final CaseService cases;

  QueueResource(ClinicStore store, ClinicDoor door, CaseService cases) {
    this.store = store;
    this.door = door;
    this.cases = cases;
  }

  @GET
  @Path("/queue")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public QueueNote queue(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return QueueNote.of(store.cases().triage(door.enter(key, clinic, ORGANISER, HELPER)));
  }

  @POST
  @Path("/replies")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public List<GivenNote> reply(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      byte[] body) {
    Caller caller = door.enter(key, clinic, ORGANISER, HELPER);
    return cases.replyToAll(caller, RequestJson.parse(body)).stream().map(GivenNote::of).toList();
  }
}
