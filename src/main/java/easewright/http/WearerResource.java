package easewright.http;

import easewright.access.ClinicDoor;
import easewright.answering.CaseService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.request.RequestJson;
import easewright.saying.CaseNotes.NoteNote;
import easewright.saying.CaseNotes.RoundNote;
import easewright.saying.CaseNotes.StoryNote;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;
import org.jboss.resteasy.reactive.ResponseStatus;

/**
 * One case, for its wearer, through a secret link. Shows advice only after a helper has replied,
 * but cautions at once.
 */
@Path("/v1/wearer-links/{link}")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class WearerResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final CaseService cases;

  WearerResource(ClinicStore store, ClinicDoor door, CaseService cases) {
    this.store = store;
    this.door = door;
    this.cases = cases;
  }

  @GET
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  @ResponseHeader(name = "Referrer-Policy", value = "no-referrer")
  public StoryNote story(@PathParam("link") String link) {
    Caller wearer = door.follow(link);
    return StoryNote.forWearer(store.cases().story(wearer, wearer.caseId()));
  }

  @DELETE
  public void delete(@PathParam("link") String link) {
    Caller wearer = door.follow(link);
    store.cases().delete(wearer, wearer.caseId());
  }

  @POST
  @Path("/rounds")
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public RoundNote addRound(@PathParam("link") String link, byte[] body) {
    Caller wearer = door.follow(link);
    return RoundNote.forWearer(cases.addRound(wearer, wearer.caseId(), RequestJson.parse(body)));
  }

  @PUT
  @Path("/rounds/{number}/outcome")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote outcome(
      @PathParam("link") String link, @PathParam("number") int number, byte[] body) {
    Caller wearer = door.follow(link);
    return StoryNote.forWearer(
        cases.outcome(wearer, wearer.caseId(), number, RequestJson.parse(body)));
  }

  @POST
  @Path("/notes")
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public NoteNote note(@PathParam("link") String link, byte[] body) {
    Caller wearer = door.follow(link);
    return NoteNote.of(cases.note(wearer, wearer.caseId(), RequestJson.parse(body)));
  }
}
