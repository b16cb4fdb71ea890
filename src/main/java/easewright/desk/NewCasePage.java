package easewright.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.CaseService;
import easewright.clinic.Case;
import easewright.clinic.Role;
import easewright.request.FaultyRequest;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import org.jboss.resteasy.reactive.RestResponse;

/** Stores a question as a new case, identifying its wearer by a nickname only. */
@Path("/desk/clinics/{clinic}/cases")
@Produces(DeskResource.HTML)
@Blocking
public class NewCasePage {
  private final SignedIn signedIn;
  private final CaseService cases;
  private final QuestionPanel bench;
  private final DeskResource desk;

  NewCasePage(SignedIn signedIn, CaseService cases, QuestionPanel bench, DeskResource desk) {
    this.signedIn = signedIn;
    this.cases = cases;
    this.bench = bench;
    this.desk = desk;
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public RestResponse<String> keep(
      @PathParam("clinic") String clinic, byte[] body, UriInfo called) {
    FilledForm form = FilledForm.of(body);
    signedIn.mustBeOurs(form);
    ClinicViewer who = signedIn.enter(clinic, Role.ORGANISER, Role.HELPER);
    QuestionPanel.Outcome answered = bench.outcome(form, called);
    if (answered.status() != 200) {
      return desk.page(answered); // a faulty question opens no case
    }
    try {
      ObjectNode nickname = form.json("/nickname");
      Case opened =
          answered.shown().isAnswered()
              ? cases.open(who.caller(), nickname, bench.request(form))
              : cases.open(who.caller(), nickname);
      return SignInPage.seeOther(who.home() + "/cases/" + opened.id());
    } catch (FaultyRequest refusal) {
      return desk.page(
          new QuestionPanel.Outcome(form.refused(refusal), answered.shown(), refusal.status()));
    }
  }
}
