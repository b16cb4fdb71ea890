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
        ClinicViewer who,
        Clinic clinic,
        List<Queue.Entry> waiting,
        List<Queue.Entry> answered,
        List<Queue.Group> groups,
        List<Case> closed);
  }

  @GET
  public String page(@PathParam("clinic") String clinic) {
    ClinicViewer who = signedIn.enter(clinic, ORGANISER, HELPER);
    List<Case> all = store.cases().queue(who.caller());
    Queue queue = Queue.of(all);
    return Pages.queue(
            who,
            store.clinics().read(who.caller()),
            queue.entries().stream().filter(QueuePage::waits).toList(),
            queue.entries().stream().filter(entry -> !waits(entry)).toList(),
            queue.groups(),
            all.stream().filter(Case::closed).toList())
        .render();
  }

  private static boolean waits(Queue.Entry entry) {
    return entry.reason() != Queue.Reason.ANSWERED;
  }
}
