package easewright.desk;

import easewright.access.ClinicDoor;
import easewright.answering.ClinicService;
import easewright.clinic.Clinics;
import easewright.request.FaultyRequest;
import easewright.saying.ClinicNotes.OpenedClinic;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestResponse;

/** Opens a clinic, and shows its organiser's key this once. */
@Path("/desk/clinics/new")
@Produces(DeskResource.HTML)
@Blocking
public class NewClinicPage {
  private final SignedIn signedIn;
  private final ClinicService clinics;
  private final ClinicDoor door;

  NewClinicPage(SignedIn signedIn, ClinicService clinics, ClinicDoor door) {
    this.signedIn = signedIn;
    this.clinics = clinics;
    this.door = door;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance newClinic(
        FilledForm form, ClinicDoor.Founding founding, boolean refused);

    static native TemplateInstance openedClinic(OpenedClinic opened);
  }

  @GET
  public String blank() {
    return Pages.newClinic(FilledForm.blank(), founding(), false).render();
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> open(byte[] body) {
    return opened(
        body, form -> clinics.open(form.json("/name", "/organiser", "/retentionDays")), false);
  }

  @POST
  @Path("/sample")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> openSample(byte[] body) {
    return opened(body, form -> clinics.openSample(), founding() == ClinicDoor.Founding.ANYBODY);
  }

  /**
   * Opens a clinic.
   *
   * @param enter whether to go straight in: the sample is worth no key where only this machine is
   *     served
   */
  private RestResponse<String> opened(
      byte[] body, Function<FilledForm, Clinics.Opened> opening, boolean enter) {
    signedIn.mustBeSentFromHere();
    FilledForm form = FilledForm.of(body);
    String foundingKey = ClinicDoor.bringing(form.value("foundingKey"));
    if (!door.opensTo(foundingKey, signedIn.request())) {
      if (founding() == ClinicDoor.Founding.NOBODY) {
        return page(403, form, false);
      }
      signedIn.countWrongKey();
      return page(422, form, true);
    }
    try {
      OpenedClinic opened = OpenedClinic.of(opening.apply(form));
      if (enter) {
        return SignInPage.seeOther(
            "/desk/clinics/" + opened.clinic().id(), signedIn.cookie(opened.key().key()));
      }
      return RestResponse.ResponseBuilder.<String>create(201)
          .entity(Pages.openedClinic(opened).render())
          .cookie(signedIn.cookie(opened.key().key()))
          .build();
    } catch (FaultyRequest refusal) {
      return page(refusal.status(), form.refused(refusal), false);
    }
  }

  private RestResponse<String> page(int status, FilledForm form, boolean refused) {
    return RestResponse.ResponseBuilder.<String>create(status)
        .entity(Pages.newClinic(form, founding(), refused).render())
        .build();
  }

  private ClinicDoor.Founding founding() {
    return door.founding(signedIn.request());
  }
}
