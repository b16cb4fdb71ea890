package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.answering.CaseService;
import easewright.clinic.Case;
import easewright.clinic.ClinicStore;
import easewright.clinic.Story;
import easewright.request.FaultyRequest;
import easewright.request.Standing;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.jboss.resteasy.reactive.RestResponse;

/** The desk within a case: answers the next toile like any question, then stores it as a round. */
@Path("/desk/clinics/{clinic}/cases/{case}/round")
@Produces(DeskResource.HTML)
@Blocking
public class RoundPage {
  private final SignedIn signedIn;
  private final ClinicStore store;
  private final CaseService cases;
  private final QuestionPanel bench;

  RoundPage(SignedIn signedIn, ClinicStore store, CaseService cases, QuestionPanel bench) {
    this.signedIn = signedIn;
    this.store = store;
    this.cases = cases;
    this.bench = bench;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance round(
        ClinicViewer who,
        Case current,
        FilledForm form,
        QuestionPanel.Choices choices,
        DeskAnswer shown,
        List<String> fields,
        List<CaseViews.Tried> tried);
  }

  @GET
  public RestResponse<String> blank(
      @PathParam("clinic") String clinic, @PathParam("case") String id) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    Story story = store.cases().story(who.caller(), id);
    Standing standing = cases.standing(who.caller(), id);
    return page(
        who,
        story.current(),
        QuestionPanel.Outcome.blank(NextRound.form(story, standing.asRequest())));
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> answered(
      @PathParam("clinic") String clinic,
      @PathParam("case") String id,
      byte[] body,
      UriInfo called) {
    FilledForm form = FilledForm.of(body);
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    Case current = store.cases().story(who.caller(), id).current();
    if (!form.ticked("keep")) {
      return page(who, current, bench.goingOn(form, called));
    }
    signedIn.mustBeOurs(form);
    try {
      cases.addRound(who.caller(), id, bench.request(form));
      return SignInPage.seeOther(who.home() + "/cases/" + id);
    } catch (FaultyRequest refusal) {
      return page(who, current, bench.refused(form, refusal));
    }
  }

  private RestResponse<String> page(ClinicViewer who, Case current, QuestionPanel.Outcome outcome) {
    return RestResponse.ResponseBuilder.<String>create(outcome.status())
        .entity(
            Pages.round(
                    who,
                    current,
                    outcome.form(),
                    bench.choices(outcome),
                    outcome.shown(),
                    QuestionPanel.OWN_FAULTS,
                    triedIn(outcome.form()))
                .render())
        .build();
  }

  /** An unreadable entry is reported as a fault, not shown as tried. */
  private static List<CaseViews.Tried> triedIn(FilledForm form) {
    try {
      return Conversation.tried(form);
    } catch (FaultyRequest unreadable) {
      return List.of();
    }
  }
}
