package easewright.clinic;

import java.util.List;

/**
 * Who calls, known by their key. Everything in the store asks for one, and looks only into its
 * clinic.
 *
 * @param clinic the clinic's id
 * @param key the key's id
 * @param name the name the key was issued to; a wearer's is the case's nickname
 * @param caseId the one case a wearer's link leads to; null for others
 */
public record Caller(String clinic, Role role, String key, String name, String caseId) {

  /**
   * Refuses every other role.
   *
   * @throws NotAllowed unless the caller has one of these
   */
  public void mustBe(Role... allowed) {
    if (!List.of(allowed).contains(role)) {
      throw new NotAllowed();
    }
  }

  /** To a wearer every case but their own is not there, and what can be no id is nobody's. */
  void mustReach(String id) {
    if (!Key.isId(id) || role == Role.WEARER && !id.equals(caseId)) {
      throw new NotHere();
    }
  }

  boolean isWearer() {
    return role == Role.WEARER;
  }
}
