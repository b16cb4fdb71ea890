package easewright.desk;

import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.Role;

/**
 * The visitor of a clinic's page.
 *
 * @param token for their forms, see {@link SignedIn#TOKEN}
 */
public record ClinicViewer(Caller caller, String token) {
  /** Base path of their clinic's pages. */
  public String home() {
    return "/desk/clinics/" + caller.clinic();
  }

  /** Whether they organise the clinic. */
  public boolean isOrganiser() {
    return caller.role() == Role.ORGANISER;
  }

  /** Whether they hold a case. */
  public boolean holds(Case one) {
    return one.holder() != null && one.holder().key().equals(caller.key());
  }

  /**
   * Whether they may change a case: a case with a holder may be changed only by them or an
   * organiser.
   */
  public boolean mayChange(Case one) {
    return one.holder() == null || holds(one) || isOrganiser();
  }
}
