package easewright.api;

import easewright.api.ClinicNotes.NoteNote;
import easewright.api.ClinicNotes.RoundNote;
import easewright.api.ClinicNotes.StoryNote;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Fitted;
import easewright.clinic.Outcome;
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
import java.util.List;
import org.jboss.resteasy.reactive.ResponseHeader;
import org.jboss.resteasy.reactive.ResponseStatus;

/**
 * One case, for the wearer it is about, by a link nobody else has. What the rule book advises is
 * told once a helper has replied, what it warns of at once.
 */
@Path("/v1/wearer-links/{link}")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class WearerResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final FittedReader fittings;

  WearerResource(ClinicStore store, ClinicDoor door, FittedReader fittings) {
    this.store = store;
    this.door = door;
    this.fittings = fittings;
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
    Fitted next = fittings.read(body, store.rounds().told(wearer, wearer.caseId()));
    return RoundNote.forWearer(store.rounds().add(wearer, wearer.caseId(), next));
  }

  @PUT
  @Path("/rounds/{number}/outcome")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote outcome(
      @PathParam("link") String link, @PathParam("number") int number, byte[] body) {
    Caller wearer = door.follow(link);
    ClinicForm form = new ClinicForm(body, "outcome", "said");
    Outcome outcome = form.oneOf("outcome", List.of(Outcome.values()));
    String said = form.textOrNone("said");
    form.refuseFaulty();
    return StoryNote.forWearer(
        store.rounds().outcome(wearer, wearer.caseId(), number, outcome, said));
  }

  @POST
  @Path("/notes")
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public NoteNote note(@PathParam("link") String link, byte[] body) {
    Caller wearer = door.follow(link);
    ClinicForm form = new ClinicForm(body, "text");
    String text = form.text("text");
    form.refuseFaulty();
    return NoteNote.of(store.cases().note(wearer, wearer.caseId(), text));
  }
}
