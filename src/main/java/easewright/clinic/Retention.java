package easewright.clinic;

import easewright.clinic.AuditEntry.Deed;
import java.time.Duration;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Deletes expired data of a clinic: cases and audit entries older than its retention, by the {@link
 * RetentionClock}.
 */
public final class Retention {
  private static final long DAY_MS = Duration.ofDays(1).toMillis();

  private final Database database;
  private final Audit audit;
  private final RetentionClock clock;

  Retention(Database database, Audit audit, RetentionClock clock) {
    this.database = database;
    this.audit = audit;
    this.clock = clock;
  }

  /** Deletes expired data of every clinic; call it once a day. Does not create a missing store. */
  public void expireAll() {
    if (database.mayHoldClinics()) {
      List<String> clinics =
          database.transaction(
              handle -> handle.createQuery("select id from clinics").mapTo(String.class).list());
      clinics.forEach(this::expire);
      database.transaction(clock::held).ifPresent(database.news()::clockHeld);
    }
  }

  /** Deletes expired data of the caller's clinic. */
  public void expireFor(Caller caller) {
    expire(caller.clinic());
  }

  private void expire(String clinic) {
    database.transaction(
        handle -> {
          List<Integer> days =
              handle
                  .createQuery("select retention_days from clinics where id = :id")
                  .bind("id", clinic)
                  .mapTo(Integer.class)
                  .list();
          for (int kept : days) {
            expire(handle, clinic, clock.millis(handle) - kept * DAY_MS);
          }
          return null;
        });
  }

  private void expire(Handle handle, String clinic, long beforeMs) {
    List<String> old =
        handle
            .createQuery(
                "select id from cases where clinic_id = :clinic and changed_ms < :before"
                    + " <lock>")
            .bind("clinic", clinic)
            .bind("before", beforeMs)
            .mapTo(String.class)
            .list();
    for (String id : old) {
      handle.createUpdate("delete from cases where id = :id").bind("id", id).execute();
      audit.noteOwn(handle, clinic, Deed.CASE_EXPIRED, id);
    }
    handle
        .createUpdate("delete from audit where clinic_id = :clinic and done_ms < :before")
        .bind("clinic", clinic)
        .bind("before", beforeMs)
        .execute();
  }
}
