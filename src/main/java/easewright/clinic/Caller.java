package easewright.clinic;

import java.util.List;

/**
 * A caller, identified by key. Every operation of the store requires one, and accesses only its
 * clinic.
 *
 * @param clinic the clinic's id
 * @param key the key's id
 * @param name the name the key was issued to; a wearer's is the case's nickname
 * @param caseId the one case a wearer's link leads to; null for others
 */
public record Caller(String clinic, Role role, String key, String name, String caseId) {

  /**
   * Rejects all other roles.
   *
   * @throws NotAllowed unless the caller has one of these
   */
  public void mustBe(Role... allowed) {
    if (!List.of(allowed).contains(role)) {
      throw new NotAllowed();
    }
  }

  /**
   * For a wearer, every case except their own does not exist, nor does one with an impossible id.
   */
  void mustReach(String id) {
    if (!Key.isId(id) || role == Role.WEARER && !id.equals(caseId)) {
      throw new NotHere();
    }
  }

  boolean isWearer() {
    return role == Role.WEARER;
  }
}
