package easewright.desk;

import easewright.clinic.Caller;
import easewright.clinic.Case;
import easewright.clinic.Role;

/**
 * Whoever sits before a page of a clinic.
 *
 * @param token what their forms carry, see {@link SignedIn#TOKEN}
 */
public record ClinicViewer(Caller caller, String token) {
  /** Where their clinic's pages begin. */
  public String home() {
    return "/desk/clinics/" + caller.clinic();
  }

  /** Whether they look after the clinic. */
  public boolean isOrganiser() {
    return caller.role() == Role.ORGANISER;
  }

  /** Whether they have a case. */
  public boolean holds(Case one) {
    return one.holder() != null && one.holder().key().equals(caller.key());
  }

  /** Whether a case is theirs to change: a case somebody has is left to them or the organiser. */
  public boolean mayChange(Case one) {
    return one.holder() == null || holds(one) || isOrganiser();
  }
}
