package easewright.http;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.access.ClinicDoor;
import easewright.answering.PhotoService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.request.PhotoUpload;
import easewright.saying.CaseNotes.PhotoNote;
import easewright.saying.ServedPhoto;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.jboss.resteasy.reactive.ResponseHeader;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;

/** The photos of a case, for those who answer it. */
@Path("/v1/clinics/{clinic}/cases/{case}/photos")
@Blocking
public class PhotoResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final PhotoService photos;

  PhotoResource(ClinicStore store, ClinicDoor door, PhotoService photos) {
    this.store = store;
    this.door = door;
    this.photos = photos;
  }

  @POST
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @Produces(MediaType.APPLICATION_JSON)
  @ResponseStatus(201)
  @ResponseHeader(name = "Cache-Control", value = "no-store")
  public PhotoNote add(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @HeaderParam(HttpHeaders.CONTENT_TYPE) String form,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body) {
    Caller caller = door.enter(key, clinic, ORGANISER, HELPER);
    return PhotoNote.of(photos.add(caller, id, PhotoUpload.of(form, body)));
  }

  @GET
  @Path("/{photo}")
  @Produces(ServedPhoto.FORM)
  public RestResponse<byte[]> read(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("photo") String photo) {
    Caller caller = door.enter(key, clinic, ORGANISER, HELPER);
    return served(store.photos().large(caller, id, photo));
  }

  @DELETE
  @Path("/{photo}")
  public void delete(
      @HeaderParam(HttpHeaders.AUTHORIZATION) String key,
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("photo") String photo) {
    store.photos().delete(door.enter(key, clinic, ORGANISER, HELPER), id, photo);
  }

  static RestResponse<byte[]> served(byte[] jpeg) {
    var response = RestResponse.ResponseBuilder.ok(jpeg);
    ServedPhoto.HEADERS.forEach(response::header);
    return response.build();
  }
}
