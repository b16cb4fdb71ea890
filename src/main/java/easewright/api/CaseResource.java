package easewright.api;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.api.ClinicNotes.CaseNote;
import easewright.api.ClinicNotes.IssuedKey;
import easewright.api.ClinicNotes.NoteNote;
import easewright.api.ClinicNotes.RoundNote;
import easewright.api.ClinicNotes.StoryNote;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Outcome;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.jboss.resteasy.reactive.ResponseHeader;
import org.jboss.resteasy.reactive.ResponseStatus;

/** The cases of a clinic, for those who answer them. */
@Path("/v1/clinics/{clinic}/cases")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class CaseResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final FittedReader fittings;

  CaseResource(ClinicStore store, ClinicDoor door, FittedReader fittings) {
    this.store = store;
    this.door = door;
    this.fittings = fittings;
  }

  private Caller caller(String key, String clinic) {
    return door.enter(key, clinic, ORGANISER, HELPER);
  }

  @GET
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public List<CaseNote> queue(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return store.cases().queue(caller(key, clinic)).stream().map(CaseNote::of).toList();
  }

  @POST
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote open(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      byte[] body) {
    return CaseNote.of(store.cases().open(caller(key, clinic), nicknameIn(body)));
  }

  /** Opens a case with its first round, both or neither: a question kept from the desk. */
  public CaseNote keep(String key, String clinic, byte[] nickname, byte[] fitting) {
    Caller caller = caller(key, clinic);
    return CaseNote.of(store.rounds().open(caller, nicknameIn(nickname), fittings.read(fitting)));
  }

  private static String nicknameIn(byte[] body) {
    ClinicForm form = new ClinicForm(body, "nickname");
    String nickname = form.name("nickname");
    form.refuseFaulty();
    return nickname;
  }

  @GET
  @Path("/{case}")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote story(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id) {
    return StoryNote.of(store.cases().story(caller(key, clinic), id));
  }

  @GET
  @Path("/{case}/export")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote export(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id) {
    return StoryNote.of(store.cases().export(caller(key, clinic), id));
  }

  @DELETE
  @Path("/{case}")
  public void delete(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id) {
    store.cases().delete(caller(key, clinic), id);
  }

  @POST
  @Path("/{case}/taking")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote take(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = caller(key, clinic);
    return CaseNote.of(store.cases().take(caller, id, versionIn(body)));
  }

  @POST
  @Path("/{case}/handing-over")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote handOver(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = caller(key, clinic);
    ClinicForm form = new ClinicForm(body, "version", "to");
    int version = form.version();
    String to = form.idOrNone("to");
    form.refuseFaulty();
    return CaseNote.of(store.cases().handOver(caller, id, version, to));
  }

  @POST
  @Path("/{case}/closing")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote close(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = caller(key, clinic);
    return CaseNote.of(store.cases().close(caller, id, versionIn(body)));
  }

  @POST
  @Path("/{case}/reopening")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote reopen(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = caller(key, clinic);
    return CaseNote.of(store.cases().reopen(caller, id, versionIn(body)));
  }

  private static int versionIn(byte[] body) {
    ClinicForm form = new ClinicForm(body, "version");
    int version = form.version();
    form.refuseFaulty();
    return version;
  }

  @POST
  @Path("/{case}/rounds")
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public RoundNote addRound(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = caller(key, clinic);
    return RoundNote.of(
        store.rounds().add(caller, id, fittings.read(body, store.rounds().told(caller, id))));
  }

  @PUT
  @Path("/{case}/rounds/{number}/reply")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote reply(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("number") int number,
      byte[] body) {
    Caller caller = caller(key, clinic);
    ClinicForm form = new ClinicForm(body, "version", "text");
    int version = form.version();
    String text = form.text("text");
    form.refuseFaulty();
    return StoryNote.of(store.rounds().reply(caller, id, number, version, text));
  }

  @PUT
  @Path("/{case}/rounds/{number}/outcome")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote outcome(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("number") int number,
      byte[] body) {
    Caller caller = caller(key, clinic);
    ClinicForm form = new ClinicForm(body, "outcome", "said");
    Outcome outcome = form.oneOf("outcome", List.of(Outcome.values()));
    String said = form.textOrNone("said");
    form.refuseFaulty();
    return StoryNote.of(store.rounds().outcome(caller, id, number, outcome, said));
  }

  @POST
  @Path("/{case}/notes")
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public NoteNote note(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = caller(key, clinic);
    ClinicForm form = new ClinicForm(body, "text");
    String text = form.text("text");
    form.refuseFaulty();
    return NoteNote.of(store.cases().note(caller, id, text));
  }

  @POST
  @Path("/{case}/wearer-link")
  @Consumes(MediaType.WILDCARD) // nothing is sent
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public IssuedKey link(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id) {
    return IssuedKey.of(store.keys().issueLink(caller(key, clinic), id));
  }
}
