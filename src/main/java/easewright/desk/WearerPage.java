package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.api.ClinicDoor;
import easewright.api.FaultyRequest;
import easewright.api.FittedReader;
import easewright.api.SignResource;
import easewright.api.SignResource.SignNote;
import easewright.api.WearerResource;
import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.Story;
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
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestResponse;

/**
 * A wearer's own case, by a link nobody else has. The link is what lets them in, so no cookie is
 * set, and no form from elsewhere can be made without knowing it.
 */
@Path("/desk/wearer/{link}")
@Produces(DeskResource.HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Blocking
public class WearerPage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final ClinicDoor door;
  private final WearerResource own;
  private final Stories stories;
  private final FittedReader fittings;
  private final SignResource signs;

  WearerPage(
      SignedIn signedIn,
      ClinicStore store,
      ClinicDoor door,
      WearerResource own,
      Stories stories,
      FittedReader fittings,
      SignResource signs) {
    this.signedIn = signedIn;
    this.store = store;
    this.door = door;
    this.own = own;
    this.stories = stories;
    this.fittings = fittings;
    this.signs = signs;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance wearer(
        String link, Stories.Shown story, FilledForm form, List<SignNote> standing);

    static native TemplateInstance deleteOwn(String link);

    static native TemplateInstance deletedOwn();
  }

  @GET
  @Consumes(MediaType.WILDCARD)
  public String page(@PathParam("link") String link) {
    return page(link, FilledForm.blank());
  }

  private String page(String link, FilledForm form) {
    return Pages.wearer(link, stories.shown(story(link), ""), form, standing(link)).render();
  }

  /** Dangers told earlier, to be asked about. */
  private List<SignNote> standing(String link) {
    Caller wearer = door.follow(link);
    List<String> dangers =
        fittings.standing(store.rounds().told(wearer, wearer.caseId())).dangers();
    return signs.all().stream().filter(sign -> dangers.contains(sign.id())).toList();
  }

  private Story story(String link) {
    Caller wearer = door.follow(link);
    return store.cases().story(wearer, wearer.caseId());
  }

  /** Does what a button of the page says. */
  @POST
  @Path("/{deed}")
  public RestResponse<String> change(
      @PathParam("link") String link, @PathParam("deed") String deed, byte[] body) {
    signedIn.mustBeSentFromHere();
    FilledForm form = FilledForm.of(body).with(Map.of("deed", List.of(deed)));
    try {
      switch (deed) {
        case "round" -> addRound(link, form);
        case "outcome" -> own.outcome(link, form.number("number"), form.json("/outcome", "/said"));
        case "note" -> own.note(link, form.json("/text"));
        default -> throw new NotFoundException();
      }
      return SignInPage.seeOther("/desk/wearer/" + link);
    } catch (FaultyRequest refusal) {
      return RestResponse.ResponseBuilder.<String>create(refusal.status())
          .entity(page(link, form.refused(refusal)))
          .build();
    }
  }

  /** What was told of the wearer and the pattern before need not be told again. */
  private void addRound(String link, FilledForm form) {
    ObjectNode request = NextToile.fitting(story(link));
    if (!form.value("/text").isEmpty()) {
      request.put("text", form.value("/text"));
    }
    for (SignNote danger : standing(link)) {
      if (form.holds("gone", danger.id())) {
        request.withArray("signs").addObject().put("sign", danger.id()).put("seen", "absent");
      }
    }
    own.addRound(link, request.toString().getBytes(StandardCharsets.UTF_8));
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
    own.delete(link);
    return RestResponse.ok(Pages.deletedOwn().render());
  }
}
