package easewright.desk;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.clinic.Case;
import easewright.clinic.Clinic;
import easewright.clinic.ClinicStore;
import easewright.clinic.Queue;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import java.util.List;

/** Which case of a clinic to answer next, and which have the same question. */
@Path("/desk/clinics/{clinic}")
@Produces(DeskResource.HTML)
@Blocking
public class QueuePage {
  private final SignedIn signedIn;
  private final ClinicStore store;

  QueuePage(SignedIn signedIn, ClinicStore store) {
    this.signedIn = signedIn;
    this.store = store;
  }

  @CheckedTemplate(basePath = "desk")
  static final class Pages {
    private Pages() {}

    static native TemplateInstance queue(
        ClinicViewer who, Clinic clinic, QueueView queue, List<Queue.Group> groups);
  }

  @GET
  public String page(
      @PathParam("clinic") String clinic,
      @QueryParam("state") String state,
      @QueryParam("q") String words,
      @QueryParam("from") String from) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    List<Case> all = store.cases().queue(who.caller());
    return Pages.queue(
            who,
            store.clinics().read(who.caller()),
            QueueView.of(all, who, state, words, number(from)),
            Queue.of(all).groups())
        .render();
  }

  private static int number(String from) {
    return from != null && from.matches("[0-9]{1,6}") ? Integer.parseInt(from) : 0;
  }
}
