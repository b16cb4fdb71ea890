package easewright.desk;

import static easewright.clinic.Role.ORGANISER;

import easewright.access.PublicAddress;
import easewright.answering.ClinicService;
import easewright.clinic.AuditEntry;
import easewright.clinic.Caller;
import easewright.clinic.Clinic;
import easewright.clinic.ClinicStore;
import easewright.clinic.KeyEntry;
import easewright.clinic.LastKey;
import easewright.clinic.Overtaken;
import easewright.request.FaultyRequest;
import easewright.saying.ClinicNotes.ExportNote;
import easewright.saying.ClinicNotes.IssuedKey;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.ResponseHeader;
import org.jboss.resteasy.reactive.RestResponse;

/** Administration of a clinic: keys, name and retention, audit log, and deletion. */
@Path("/desk/clinics/{clinic}/organise")
@Produces(DeskResource.HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Blocking
public class OrganiserPage {
  private static final int MOST_SHOWN = 200;

  private final SignedIn signedIn;
  private final ClinicStore store;
  private final ClinicService clinics;
  private final PublicAddress address;

  OrganiserPage(
      SignedIn signedIn, ClinicStore store, ClinicService clinics, PublicAddress address) {
    this.signedIn = signedIn;
    this.store = store;
    this.clinics = clinics;
    this.address = address;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance organise(
        ClinicViewer who,
        Clinic clinic,
        List<KeyEntry> keys,
        FilledForm form,
        boolean overtaken,
        boolean lastKey);

    static native TemplateInstance issuedKey(ClinicViewer who, IssuedKey issued, String name);

    static native TemplateInstance audit(
        ClinicViewer who, List<AuditEntry> entries, boolean more, boolean all);

    static native TemplateInstance feedLink(ClinicViewer who, String link);

    static native TemplateInstance deleteClinic(ClinicViewer who, Clinic clinic);
  }

  @GET
  @Consumes(MediaType.WILDCARD)
  public String page(@PathParam("clinic") String clinic) {
    return page(clinic, FilledForm.blank(), false, false);
  }

  private String page(String clinic, FilledForm form, boolean overtaken, boolean lastKey) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER);
    return Pages.organise(
            who,
            store.clinics().read(who.caller()),
            store.keys().list(who.caller()),
            form,
            overtaken,
            lastKey)
        .render();
  }

  /** Runs the action of a button. */
  @POST
  @Path("/{deed}")
  public RestResponse<String> change(
      @PathParam("clinic") String clinic, @PathParam("deed") String action, byte[] body) {
    FilledForm form = FilledForm.of(body).with(Map.of("deed", List.of(action)));
    signedIn.mustBeOurs(form);
    Caller caller = signedIn.enter(clinic, ORGANISER).caller();
    try {
      switch (action) {
        case "settings" -> clinics.change(caller, form.json("/version", "/name", "/retentionDays"));
        case "revoke" -> store.keys().revoke(caller, form.value("key"));
        case "key" -> {
          IssuedKey issued = IssuedKey.of(clinics.issueKey(caller, form.json("/role", "/name")));
          ClinicViewer who = signedIn.enter(clinic, ORGANISER);
          return RestResponse.ok(Pages.issuedKey(who, issued, form.value("/name")).render());
        }
        default -> throw new NotFoundException();
      }
      return SignInPage.seeOther("/desk/clinics/" + clinic + "/organise");
    } catch (FaultyRequest refusal) {
      return refused(refusal.status(), page(clinic, form.refused(refusal), false, false));
    } catch (Overtaken late) {
      return refused(409, page(clinic, FilledForm.blank(), true, false));
    } catch (LastKey last) {
      return refused(409, page(clinic, FilledForm.blank(), false, true));
    }
  }

  /** Issues the feed's link and shows it, this once. */
  @POST
  @Path("/feed")
  public String feed(@PathParam("clinic") String clinic, byte[] body, UriInfo called) {
    signedIn.mustBeOurs(FilledForm.of(body));
    ClinicViewer who = signedIn.enter(clinic, ORGANISER);
    String link = store.links().issueFeed(who.caller());
    return Pages.feedLink(
            who, address.site(called.getBaseUri()) + "/desk/feed/" + link + "/waiting.atom")
        .render();
  }

  private static RestResponse<String> refused(int status, String page) {
    return RestResponse.ResponseBuilder.<String>create(status).entity(page).build();
  }

  @GET
  @Path("/audit")
  @Consumes(MediaType.WILDCARD)
  public String audit(@PathParam("clinic") String clinic, @QueryParam("all") String all) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER);
    boolean readingToo = "yes".equals(all);
    List<AuditEntry> entries =
        store.clinics().audit(who.caller()).stream()
            .filter(entry -> readingToo || !entry.deed().isReading())
            .toList();
    boolean more = entries.size() > MOST_SHOWN;
    return Pages.audit(who, more ? entries.subList(0, MOST_SHOWN) : entries, more, readingToo)
        .render();
  }

  @GET
  @Path("/export")
  @Produces(MediaType.APPLICATION_JSON)
  @Consumes(MediaType.WILDCARD)
  @ResponseHeader(name = "Content-Disposition", value = "attachment; filename=\"clinic.json\"")
  public ExportNote export(@PathParam("clinic") String clinic) {
    return ExportNote.of(store.clinics().export(signedIn.enter(clinic, ORGANISER).caller()));
  }

  @GET
  @Path("/delete")
  @Consumes(MediaType.WILDCARD)
  public String askBeforeDeleting(@PathParam("clinic") String clinic) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER);
    return Pages.deleteClinic(who, store.clinics().read(who.caller())).render();
  }

  /** A clinic's keys are deleted with it, so the organiser is signed out. */
  @POST
  @Path("/delete")
  public RestResponse<String> delete(@PathParam("clinic") String clinic, byte[] body) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    if (!form.ticked("sure")) {
      return SignInPage.seeOther("/desk/clinics/" + clinic + "/organise/delete");
    }
    store.clinics().delete(signedIn.enter(clinic, ORGANISER).caller());
    return SignInPage.seeOther("/desk/sign-in", signedIn.forgotten());
  }
}
