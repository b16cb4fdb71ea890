package easewright.http;

import easewright.access.ClinicDoor;
import easewright.answering.ClinicService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Role;
import easewright.request.RequestJson;
import easewright.saying.ClinicNotes.AuditNote;
import easewright.saying.ClinicNotes.ClinicNote;
import easewright.saying.ClinicNotes.ExportNote;
import easewright.saying.ClinicNotes.HolderNote;
import easewright.saying.ClinicNotes.IssuedKey;
import easewright.saying.ClinicNotes.KeyNote;
import easewright.saying.ClinicNotes.OpenedClinic;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
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

/** Clinics, their keys, and their audit log. */
@Path("/v1/clinics")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
public class ClinicResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final ClinicService clinics;
  private final RoutingContext call;

  ClinicResource(ClinicStore store, ClinicDoor door, ClinicService clinics, RoutingContext call) {
    this.store = store;
    this.door = door;
    this.clinics = clinics;
    this.call = call;
  }

  @POST
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public OpenedClinic open(@HeaderParam(HttpHeaders.AUTHORIZATION) String key, byte[] body) {
    door.mayFound(key, call.request());
    return OpenedClinic.of(clinics.open(RequestJson.parse(body)));
  }

  @POST
  @Path("/samples")
  @Consumes(MediaType.WILDCARD)
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public OpenedClinic openSample(@HeaderParam(HttpHeaders.AUTHORIZATION) String key) {
    door.mayFound(key, call.request());
    return OpenedClinic.of(clinics.openSample());
  }

  @GET
  @Path("/{clinic}")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public ClinicNote read(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return ClinicNote.of(store.clinics().read(door.enter(key, clinic)));
  }

  @PUT
  @Path("/{clinic}")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public ClinicNote change(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      byte[] body) {
    Caller caller = door.enter(key, clinic, Role.ORGANISER);
    return ClinicNote.of(clinics.change(caller, RequestJson.parse(body)));
  }

  @DELETE
  @Path("/{clinic}")
  public void delete(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    store.clinics().delete(door.enter(key, clinic));
  }

  @GET
  @Path("/{clinic}/export")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public ExportNote export(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return ExportNote.of(store.clinics().export(door.enter(key, clinic)));
  }

  @GET
  @Path("/{clinic}/audit")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public List<AuditNote> audit(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return store.clinics().audit(door.enter(key, clinic)).stream().map(AuditNote::of).toList();
  }

  @GET
  @Path("/{clinic}/helpers")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public List<HolderNote> helpers(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return store.keys().helpers(door.enter(key, clinic)).stream().map(HolderNote::of).toList();
  }

  @GET
  @Path("/{clinic}/keys")
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public List<KeyNote> keys(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key, @PathParam("clinic") String clinic) {
    return store.keys().list(door.enter(key, clinic)).stream().map(KeyNote::of).toList();
  }

  @POST
  @Path("/{clinic}/keys")
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public IssuedKey issue(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      byte[] body) {
    Caller caller = door.enter(key, clinic, Role.ORGANISER);
    return IssuedKey.of(clinics.issueKey(caller, RequestJson.parse(body)));
  }

  @DELETE
  @Path("/{clinic}/keys/{key}")
  public void revoke(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("key") String revoked) {
    store.keys().revoke(door.enter(key, clinic), revoked);
  }
}
