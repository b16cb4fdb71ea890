package easewright.desk;

import easewright.access.ClinicDoor;
import easewright.answering.PhotoService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.request.FaultyRequest;
import easewright.request.PhotoUpload;
import easewright.saying.ServedPhoto;
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
import org.jboss.resteasy.reactive.RestResponse;

/** The photos of a wearer's own case, through her secret link. */
@Path("/desk/wearer/{link}/photos")
@Blocking
public class OwnPhotoPage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final ClinicDoor door;
  private final PhotoService photos;
  private final WearerPage page;

  OwnPhotoPage(
      SignedIn signedIn, ClinicStore store, ClinicDoor door, PhotoService photos, WearerPage page) {
    this.signedIn = signedIn;
    this.store = store;
    this.door = door;
    this.photos = photos;
    this.page = page;
  }

  @POST
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @Produces(DeskResource.HTML)
  public RestResponse<String> add(
      @PathParam("link") String link,
      @HeaderParam(HttpHeaders.CONTENT_TYPE) String type,
      byte[] body) {
    signedIn.mustBeSentFromHere();
    Caller wearer = door.follow(link);
    PhotoUpload upload = PhotoUpload.of(type, body);
    try {
      photos.add(wearer, wearer.caseId(), upload);
      return SignInPage.seeOther("/desk/wearer/" + link);
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page.page(link, PhotoPage.filled(upload).refused(refusal)))
          .build();
    }
  }

  @GET
  @Path("/{photo}")
  @Produces(ServedPhoto.FORM)
  public RestResponse<byte[]> large(
      @PathParam("link") String link, @PathParam("photo") String photo) {
    Caller wearer = door.follow(link);
    return PhotoPage.served(store.photos().large(wearer, wearer.caseId(), photo));
  }

  @GET
  @Path("/{photo}/small")
  @Produces(ServedPhoto.FORM)
  public RestResponse<byte[]> small(
      @PathParam("link") String link, @PathParam("photo") String photo) {
    Caller wearer = door.follow(link);
    return PhotoPage.served(store.photos().small(wearer, wearer.caseId(), photo));
  }

  @POST
  @Path("/{photo}/delete")
  @Produces(DeskResource.HTML)
  public RestResponse<String> delete(
      @PathParam("link") String link, @PathParam("photo") String photo) {
    signedIn.mustBeSentFromHere();
    Caller wearer = door.follow(link);
    store.photos().delete(wearer, wearer.caseId(), photo);
    return SignInPage.seeOther("/desk/wearer/" + link);
  }
}
