package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

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
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestResponse;

/** The photos of a case, for those who answer it. */
@Path("/desk/clinics/{clinic}/cases/{case}/photos")
@Blocking
public class PhotoPage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final PhotoService photos;
  private final CasePage page;

  PhotoPage(SignedIn signedIn, ClinicStore store, PhotoService photos, CasePage page) {
    this.signedIn = signedIn;
    this.store = store;
    this.photos = photos;
    this.page = page;
  }

  @POST
  @Consumes(MediaType.MULTIPART_FORM_DATA)
  @Produces(DeskResource.HTML)
  public RestResponse<String> add(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @HeaderParam(HttpHeaders.CONTENT_TYPE) String type,
      byte[] body,
      UriInfo called) {
    PhotoUpload upload = PhotoUpload.of(type, body);
    FilledForm form = filled(upload);
    signedIn.mustBeOurs(form);
    Caller caller = signedIn.enter(clinic, ORGANISER, HELPER).caller();
    try {
      photos.add(caller, id, upload);
      return SignInPage.seeOther("/desk/clinics/" + clinic + "/cases/" + id);
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page.page(clinic, id, called, form.refused(refusal), null))
          .build();
    }
  }

  /** The fields of an upload, as those of any other form. */
  static FilledForm filled(PhotoUpload upload) {
    return FilledForm.blank()
        .with(
            Map.of(
                SignedIn.TOKEN,
                List.of(upload.field(SignedIn.TOKEN)),
                "alt",
                List.of(upload.field("alt")),
                "round",
                List.of(upload.field("round"))));
  }

  @GET
  @Path("/{photo}")
  @Produces(ServedPhoto.FORM)
  public RestResponse<byte[]> large(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("photo") String photo) {
    Caller caller = signedIn.enter(clinic, ORGANISER, HELPER).caller();
    return served(store.photos().large(caller, id, photo));
  }

  @GET
  @Path("/{photo}/small")
  @Produces(ServedPhoto.FORM)
  public RestResponse<byte[]> small(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("photo") String photo) {
    Caller caller = signedIn.enter(clinic, ORGANISER, HELPER).caller();
    return served(store.photos().small(caller, id, photo));
  }

  @POST
  @Path("/{photo}/delete")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  @Produces(DeskResource.HTML)
  public RestResponse<String> delete(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("photo") String photo,
      byte[] body) {
    signedIn.mustBeOurs(FilledForm.of(body));
    store.photos().delete(signedIn.enter(clinic, ORGANISER, HELPER).caller(), id, photo);
    return SignInPage.seeOther("/desk/clinics/" + clinic + "/cases/" + id);
  }

  static RestResponse<byte[]> served(byte[] jpeg) {
    var response = RestResponse.ResponseBuilder.ok(jpeg);
    ServedPhoto.HEADERS.forEach(response::header);
    return response.build();
  }
}
