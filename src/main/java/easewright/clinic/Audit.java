package easewright.clinic;

import easewright.clinic.AuditEntry.Deed;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Writes the audit entry in the caller's transaction. */
final class Audit {
  /** Maximum number listed, newest first; older ones are stored but not listed. */
  static final int MOST_LISTED = 10_000;

  private final Clock clock;

  Audit(Clock clock) {
    this.clock = clock;
  }

  void note(Handle handle, Caller caller, Deed deed, String caseId) {
    write(handle, caller.clinic(), caller.key(), caller.name(), caller.role().name(), deed, caseId);
  }

  /** Records an action by the service itself. */
  void noteOwn(Handle handle, String clinic, Deed deed, String caseId) {
    write(handle, clinic, null, "service", null, deed, caseId);
  }

  private void write(
      Handle handle,
      String clinic,
      String key,
      String name,
      String role,
      Deed deed,
      String caseId) {
    handle
        .createUpdate(
            "insert into audit (clinic_id, done_ms, key_id, name, role, deed, case_id)"
                + " values (:clinic, :now, :key, :name, :role, :deed, :case)")
        .bind("clinic", clinic)
        .bind("now", clock.millis())
        .bind("key", key)
        .bind("name", name)
        .bind("role", role)
        .bind("deed", deed.name())
        .bind("case", caseId)
        .execute();
  }

  /** The entries of a clinic, newest first. */
  List<AuditEntry> of(Handle handle, String clinic) {
    return handle
        .createQuery(
            "select a.*, c.nickname from audit a left join cases c on c.id = a.case_id"
                + " where a.clinic_id = :clinic order by a.id desc limit :most")
        .bind("clinic", clinic)
        .bind("most", MOST_LISTED)
        .map(
            (row, context) ->
                new AuditEntry(
                    Instant.ofEpochMilli(row.getLong("done_ms")),
                    row.getString("key_id"),
                    row.getString("name"),
                    row.getString("role") == null ? null : Role.valueOf(row.getString("role")),
                    Deed.valueOf(row.getString("deed")),
                    row.getString("case_id"),
                    row.getString("nickname")))
        .list();
  }
}
