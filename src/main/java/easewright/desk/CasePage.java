package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.access.PublicAddress;
import easewright.answering.CaseService;
import easewright.answering.VoiceService;
import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.ClinicVoice;
import easewright.clinic.Key;
import easewright.clinic.Overtaken;
import easewright.request.FaultyRequest;
import easewright.saying.CaseNotes.StoryNote;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.ResponseHeader;
import org.jboss.resteasy.reactive.RestResponse;

/** A case's history, and all actions on a case. */
@Path("/desk/clinics/{clinic}/cases/{case}")
@Produces(DeskResource.HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Blocking
public class CasePage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final CaseService cases;
  private final VoiceService voices;
  private final CaseViews stories;
  private final PublicAddress address;

  CasePage(
      SignedIn signedIn,
      ClinicStore store,
      CaseService cases,
      VoiceService voices,
      CaseViews stories,
      PublicAddress address) {
    this.signedIn = signedIn;
    this.store = store;
    this.cases = cases;
    this.voices = voices;
    this.stories = stories;
    this.address = address;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance caseStory(
        ClinicViewer who,
        CaseViews.Shown story,
        List<Case.Holder> helpers,
        List<ClinicVoice.Snippet> snippets,
        FilledForm form,
        Overtaken late);

    static native TemplateInstance wearersLink(ClinicViewer who, Case current, String link);

    static native TemplateInstance sharedLink(ClinicViewer who, Case current, String link);

    static native TemplateInstance deleteCase(ClinicViewer who, Case current);
  }

  @GET
  @Consumes(MediaType.WILDCARD)
  public String page(
      @PathParam("clinic") String clinic, @PathParam("case") String id, UriInfo called) {
    return page(clinic, id, called, FilledForm.blank(), null);
  }

  String page(String clinic, String id, UriInfo called, FilledForm form, Overtaken late) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    CaseViews.Shown story =
        stories.shown(store.cases().story(who.caller(), id), address.site(called.getBaseUri()));
    return Pages.caseStory(
            who,
            story,
            store.keys().helpers(who.caller()),
            voices.snippets(who.caller()),
            form,
            late)
        .render();
  }

  /** Runs the action of a button; on a conflict, names the person who was quicker. */
  @POST
  @Path("/{deed}")
  public RestResponse<String> change(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      @PathParam("deed") String action,
      byte[] body,
      UriInfo called) {
    FilledForm form = FilledForm.of(body).with(Map.of("deed", List.of(action)));
    signedIn.mustBeOurs(form);
    try {
      change(signedIn.enter(clinic, ORGANISER, HELPER).caller(), id, action, form);
      return SignInPage.seeOther("/desk/clinics/" + clinic + "/cases/" + id);
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(clinic, id, called, form.refused(refusal), null))
          .build();
    } catch (Overtaken late) {
      return RestResponse.ResponseBuilder.<String>create(409)
          .entity(page(clinic, id, called, form, late))
          .build();
    }
  }

  private void change(Caller caller, String id, String action, FilledForm form) {
    switch (action) {
      case "take" -> cases.take(caller, id, form.json("/version"));
      case "put-back" -> cases.handOver(caller, id, form.json("/version"));
      case "hand-over" -> cases.handOver(caller, id, form.json("/version", "/to"));
      case "close" -> cases.close(caller, id, form.json("/version"));
      case "reopen" -> cases.reopen(caller, id, form.json("/version"));
      case "end-shares" -> store.links().endShares(caller, id);
      case "note" -> cases.note(caller, id, form.json("/text"));
      case "reply" ->
          cases.reply(caller, id, form.number("number"), form.json("/version", "/text"));
      case "withdraw" ->
          cases.withdrawReply(caller, id, form.number("number"), form.json("/version"));
      case "outcome" ->
          cases.outcome(caller, id, form.number("number"), form.json("/outcome", "/said"));
      default -> throw new NotFoundException();
    }
  }

  /** Issues the wearer's link and shows it, this once. */
  @POST
  @Path("/link")
  public String link(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body,
      UriInfo called) {
    signedIn.mustBeOurs(FilledForm.of(body));
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    Key link = store.keys().issueLink(who.caller(), id);
    return Pages.wearersLink(
            who,
            store.cases().story(who.caller(), id).current(),
            address.site(called.getBaseUri()) + "/desk/wearer/" + link.text())
        .render();
  }

  /** Issues a link to one reply and shows it, this once. */
  @POST
  @Path("/share")
  public String share(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body,
      UriInfo called) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    String link = store.links().share(who.caller(), id, form.number("number"));
    return Pages.sharedLink(
            who,
            store.cases().story(who.caller(), id).current(),
            address.site(called.getBaseUri()) + "/desk/shared/" + link)
        .render();
  }

  @GET
  @Path("/export")
  @Produces(MediaType.APPLICATION_JSON)
  @Consumes(MediaType.WILDCARD)
  @ResponseHeader(name = "Content-Disposition", value = "attachment; filename=\"case.json\"")
  public StoryNote export(@PathParam("clinic") String clinic, @PathParam("case") String id) {
    return StoryNote.of(
        store.cases().export(signedIn.enter(clinic, ORGANISER, HELPER).caller(), id));
  }

  @GET
  @Path("/delete")
  @Consumes(MediaType.WILDCARD)
  public String askBeforeDeleting(
      @PathParam("clinic") String clinic, @PathParam("case") String id) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER);
    return Pages.deleteCase(who, store.cases().story(who.caller(), id).current()).render();
  }

  @POST
  @Path("/delete")
  public RestResponse<String> delete(
      @PathParam("clinic") String clinic, @PathParam("case") String id, byte[] body) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    String page = "/desk/clinics/" + clinic;
    if (!form.ticked("sure")) {
      return SignInPage.seeOther(page + "/cases/" + id + "/delete");
    }
    store.cases().delete(signedIn.enter(clinic, ORGANISER, HELPER).caller(), id);
    return SignInPage.seeOther(page);
  }
}
