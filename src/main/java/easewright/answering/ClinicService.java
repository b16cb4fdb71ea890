package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.clinic.Caller;
import easewright.clinic.Clinic;
import easewright.clinic.ClinicStore;
import easewright.clinic.Clinics;
import easewright.clinic.Key;
import easewright.clinic.Role;
import easewright.clinic.SampleClinic;
import easewright.request.ClinicForm;
import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.List;

/**
 * Opens clinics and changes them. Requests are JSON in the contract's form; each method throws
 * {@link easewright.request.FaultyRequest} with every fault of its request.
 */
@Singleton
public class ClinicService {
  /** Days; half a year: a make-along plus time for follow-up questions. */
  private static final int USUAL_RETENTION_DAYS = 180;

  private final ClinicStore store;
  private final RoundReader fittings;

  ClinicService(ClinicStore store, RoundReader fittings) {
    this.store = store;
    this.fittings = fittings;
  }

  /** Opens a clinic; its organiser's key is shown this once. */
  public Clinics.Opened open(JsonNode request) {
    ClinicForm form = new ClinicForm(request, "name", "organiser", "retentionDays");
    String name = form.name("name");
    String organiser = form.name("organiser");
    int days = form.retentionDays(USUAL_RETENTION_DAYS);
    form.refuseFaulty();
    return store.clinics().open(name, organiser, days);
  }

  /** Opens a sample clinic of invented wearers. */
  public Clinics.Opened openSample() {
    return SampleClinic.open(store, fittings::read, Instant.now());
  }

  /** Changes a clinic's name and how long it keeps cases. */
  public Clinic change(Caller caller, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "version", "name", "retentionDays");
    int version = form.version();
    String name = form.name("name");
    int days = form.retentionDays(USUAL_RETENTION_DAYS);
    form.refuseFaulty();
    return store.clinics().change(caller, version, name, days);
  }

  /** Issues a key to a helper or another organiser; it is shown this once. */
  public Key issueKey(Caller caller, JsonNode request) {
    ClinicForm form = new ClinicForm(request, "role", "name");
    Role role = form.oneOf("role", List.of(Role.HELPER, Role.ORGANISER));
    String name = form.name("name");
    form.refuseFaulty();
    return store.keys().issue(caller, role, name);
  }
}
