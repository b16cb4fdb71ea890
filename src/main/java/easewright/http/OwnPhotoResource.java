package easewright.http;

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

/** The photos of one case, for its wearer, through a secret link. */
@Path("/v1/wearer-links/{link}/photos")
@Blocking
public class OwnPhotoResource {
  private final ClinicStore store;
  private final ClinicDoor door;
  private final PhotoService photos;

  OwnPhotoResource(ClinicStore store, ClinicDoor door, PhotoService photos) {
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
      @HeaderParam(HttpHeaders.CONTENT_TYPE) String form,
      @PathParam("link") String link,
      byte[] body) {
    Caller wearer = door.follow(link);
    return PhotoNote.of(photos.add(wearer, wearer.caseId(), PhotoUpload.of(form, body)));
  }

  @GET
  @Path("/{photo}")
  @Produces(ServedPhoto.FORM)
  public RestResponse<byte[]> read(
      @PathParam("link") String link, @PathParam("photo") String photo) {
    Caller wearer = door.follow(link);
    return PhotoResource.served(store.photos().large(wearer, wearer.caseId(), photo));
  }

  @DELETE
  @Path("/{photo}")
  public void delete(@PathParam("link") String link, @PathParam("photo") String photo) {
    Caller wearer = door.follow(link);
    store.photos().delete(wearer, wearer.caseId(), photo);
  }
}
