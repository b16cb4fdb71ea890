package easewright.http;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.access.ClinicDoor;
import easewright.answering.CaseService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.request.RequestJson;
import easewright.saying.CaseNotes.CaseNote;
import easewright.saying.CaseNotes.NoteNote;
import easewright.saying.CaseNotes.RoundNote;
import easewright.saying.CaseNotes.StoryNote;
import easewright.saying.ClinicNotes.IssuedKey;
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
  private final CaseService cases;

  CaseResource(ClinicStore store, ClinicDoor door, CaseService cases) {
    this.store = store;
    this.door = door;
    this.cases = cases;
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
    return CaseNote.of(cases.open(caller(key, clinic), RequestJson.parse(body)));
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
    return CaseNote.of(cases.take(caller(key, clinic), id, RequestJson.parse(body)));
  }

  @POST
  @Path("/{case}/handing-over")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote handOver(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    return CaseNote.of(cases.handOver(caller(key, clinic), id, RequestJson.parse(body)));
  }

  @POST
  @Path("/{case}/closing")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote close(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    return CaseNote.of(cases.close(caller(key, clinic), id, RequestJson.parse(body)));
  }

  @POST
  @Path("/{case}/reopening")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public CaseNote reopen(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    return CaseNote.of(cases.reopen(caller(key, clinic), id, RequestJson.parse(body)));
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
    return RoundNote.of(cases.addRound(caller(key, clinic), id, RequestJson.parse(body)));
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
    return StoryNote.of(cases.reply(caller(key, clinic), id, number, RequestJson.parse(body)));
  }

  @POST
  @Path("/{case}/rounds/{number}/reply/withdrawal")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public StoryNote withdrawReply(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("number") int number,
      byte[] body) {
    return StoryNote.of(
        cases.withdrawReply(caller(key, clinic), id, number, RequestJson.parse(body)));
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
    return StoryNote.of(cases.outcome(caller(key, clinic), id, number, RequestJson.parse(body)));
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
    return NoteNote.of(cases.note(caller(key, clinic), id, RequestJson.parse(body)));
  }

  @POST
  @Path("/{case}/wearer-link")
  @Consumes(MediaType.WILDCARD) // no request body
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public IssuedKey link(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id) {
    return IssuedKey.of(store.keys().issueLink(caller(key, clinic), id));
  }
}
