package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.access.ClinicDoor;
import easewright.answering.CaseService;
import easewright.answering.FittingService;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Story;
import easewright.request.FaultyRequest;
import easewright.saying.SignNote;
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
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestResponse;

/**
 * A wearer's own case, through a secret link. The link itself grants access, so no cookie is set,
 * and no other site can forge a form without knowing it.
 */
@Path("/desk/wearer/{link}")
@Produces(DeskResource.HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Blocking
public class WearerPage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final ClinicDoor door;
  private final CaseService cases;
  private final CaseViews stories;
  private final FittingService fittings;

  WearerPage(
      SignedIn signedIn,
      ClinicStore store,
      ClinicDoor door,
      CaseService cases,
      CaseViews stories,
      FittingService fittings) {
    this.signedIn = signedIn;
    this.store = store;
    this.door = door;
    this.cases = cases;
    this.stories = stories;
    this.fittings = fittings;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance wearer(
        String link, CaseViews.Shown story, FilledForm form, List<SignNote> standing);

    static native TemplateInstance deleteOwn(String link);

    static native TemplateInstance deletedOwn();
  }

  @GET
  @Consumes(MediaType.WILDCARD)
  public String page(@PathParam("link") String link) {
    return page(link, FilledForm.blank());
  }

  String page(String link, FilledForm form) {
    return Pages.wearer(link, stories.shown(story(link), ""), form, standing(link)).render();
  }

  /** Dangers reported earlier, to ask about. */
  private List<SignNote> standing(String link) {
    Caller wearer = door.follow(link);
    List<String> dangers = cases.standing(wearer, wearer.caseId()).dangers();
    return fittings.signs().stream().filter(sign -> dangers.contains(sign.id())).toList();
  }

  private Story story(String link) {
    Caller wearer = door.follow(link);
    return store.cases().story(wearer, wearer.caseId());
  }

  /** Runs the action of a button. */
  @POST
  @Path("/{deed}")
  public RestResponse<String> change(
      @PathParam("link") String link, @PathParam("deed") String action, byte[] body) {
    signedIn.mustBeSentFromHere();
    FilledForm form = FilledForm.of(body).with(Map.of("deed", List.of(action)));
    try {
      switch (action) {
        case "round" -> addRound(link, form);
        case "outcome" -> outcome(link, form);
        case "note" -> note(link, form);
        default -> throw new NotFoundException();
      }
      return SignInPage.seeOther("/desk/wearer/" + link);
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(link, form.refused(refusal)))
          .build();
    }
  }

  private void outcome(String link, FilledForm form) {
    Caller wearer = door.follow(link);
    cases.outcome(wearer, wearer.caseId(), form.number("number"), form.json("/outcome", "/said"));
  }

  private void note(String link, FilledForm form) {
    Caller wearer = door.follow(link);
    cases.note(wearer, wearer.caseId(), form.json("/text"));
  }

  /** Earlier reports about the wearer and the pattern need not be repeated. */
  private void addRound(String link, FilledForm form) {
    ObjectNode request = NextRound.fitting(story(link));
    if (!form.value("/text").isEmpty()) {
      request.put("text", form.value("/text"));
    }
    for (SignNote danger : standing(link)) {
      if (form.holds("gone", danger.id())) {
        request.withArray("signs").addObject().put("sign", danger.id()).put("seen", "absent");
      }
    }
    Caller wearer = door.follow(link);
    cases.addRound(wearer, wearer.caseId(), request);
  }

  @GET
  @Path("/delete")
  @Consumes(MediaType.WILDCARD)
  public String askBeforeDeleting(@PathParam("link") String link) {
    door.follow(link);
    return Pages.deleteOwn(link).render();
  }

  @POST
  @Path("/delete")
  public RestResponse<String> delete(@PathParam("link") String link, byte[] body) {
    signedIn.mustBeSentFromHere();
    if (!FilledForm.of(body).ticked("sure")) {
      return SignInPage.seeOther("/desk/wearer/" + link + "/delete");
    }
    Caller wearer = door.follow(link);
    store.cases().delete(wearer, wearer.caseId());
    return RestResponse.ok(Pages.deletedOwn().render());
  }
}
