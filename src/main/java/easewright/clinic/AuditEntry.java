package easewright.clinic;

import java.time.Instant;

/**
 * Who did what, and when. Nothing that was read or written stands here.
 *
 * @param key the id of the key it was done with; null when the service did it by itself
 * @param name whom the key was issued to
 * @param role the key's role, or null
 * @param caseId the case, or null; it may be gone
 */
public record AuditEntry(Instant at, String key, String name, Role role, Deed deed, String caseId) {

  /** What can be done. */
  public enum Deed {
    CLINIC_OPENED,
    CLINIC_READ,
    CLINIC_CHANGED,
    CLINIC_EXPORTED,
    AUDIT_READ,
    KEYS_READ,
    KEY_ISSUED,
    KEY_REVOKED,
    CASES_READ,
    INSIGHT_READ,
    CASE_OPENED,
    CASE_READ,
    CASE_TAKEN,
    CASE_HANDED_OVER,
    CASE_CLOSED,
    CASE_REOPENED,
    CASE_EXPORTED,
    CASE_DELETED,
    CASE_EXPIRED,
    ROUND_ADDED,
    REPLY_POSTED,
    OUTCOME_TOLD,
    NOTE_WRITTEN
  }
}
