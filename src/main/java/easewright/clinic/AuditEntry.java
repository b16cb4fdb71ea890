package easewright.clinic;

import java.time.Instant;

/**
 * Who did what, and when. Contains nothing that was read or written.
 *
 * @param key the id of the key used; null if the service acted by itself
 * @param name whom the key was issued to
 * @param role the key's role, or null
 * @param caseId the case, or null; it may no longer exist
 * @param nickname of the case, or null if it no longer exists
 */
public record AuditEntry(
    Instant at, String key, String name, Role role, Deed deed, String caseId, String nickname) {

  /** The actions recorded. */
  public enum Deed {
    CLINIC_OPENED,
    CLINIC_READ,
    CLINIC_CHANGED,
    CLINIC_EXPORTED,
    VOICE_READ,
    VOICE_CHANGED,
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
    REPLY_CORRECTED,
    REPLY_WITHDRAWN,
    OUTCOME_TOLD,
    NOTE_WRITTEN,
    PHOTO_ADDED,
    PHOTO_READ,
    PHOTO_DELETED,
    FEED_ISSUED,
    REPLY_SHARED,
    SHARES_ENDED;

    /** Whether something was only looked at. */
    public boolean isReading() {
      return name().endsWith("_READ");
    }
  }
}
