package easewright.desk;

import easewright.api.CaseResource;
import easewright.api.FaultyRequest;
import easewright.clinic.Role;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import org.jboss.resteasy.reactive.RestResponse;

/** Keeps a question as a new case, with its wearer known by a nickname only. */
@Path("/desk/clinics/{clinic}/cases")
@Produces(DeskResource.HTML)
@Blocking
public class NewCasePage {
  private final SignedIn signedIn;
  private final CaseResource cases;
  private final Bench bench;
  private final DeskResource desk;

  NewCasePage(SignedIn signedIn, CaseResource cases, Bench bench, DeskResource desk) {
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
    Who who = signedIn.enter(clinic, Role.ORGANISER, Role.HELPER);
    Bench.Outcome answered = bench.outcome(form, called);
    if (answered.status() != 200) {
      return desk.page(answered); // no case is opened for a question at fault
    }
    try {
      String key = signedIn.authorization();
      byte[] nickname = form.json("/nickname");
      byte[] fitting = bench.request(form);
      String id =
          answered.shown().isAnswered()
              ? cases.keep(key, clinic, nickname, fitting).id()
              : cases.open(key, clinic, nickname).id();
      return SignInPage.seeOther(who.home() + "/cases/" + id);
    } catch (FaultyRequest refusal) {
      return desk.page(
          new Bench.Outcome(form.refused(refusal), answered.shown(), refusal.status()));
    }
  }
}
