package easewright.clinic;

import java.time.Instant;

/**
 * Who did what, and when. Contains nothing that was read or written.
 *
 * @param key the id of the key used; null if the service acted by itself
 * @param name whom the key was issued to
 * @param role the key's role, or null
 * @param caseId the case, or null; it may no longer exist
 */
public record AuditEntry(Instant at, String key, String name, Role role, Deed deed, String caseId) {

  /** The actions recorded. */
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
