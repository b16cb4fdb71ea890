package easewright.clinic;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.clinic.AuditEntry.Deed;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Opens, reads, changes and deletes clinics. */
public final class Clinics {
  private final Database database;
  private final Keys keys;
  private final Audit audit;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  Clinics(Database database, Keys keys, Audit audit, Clock clock) {
    this.database = database;
    this.keys = keys;
    this.audit = audit;
    this.clock = clock;
  }

  /** A new clinic, and its organiser's key, which cannot be shown again. */
  public record Opened(Clinic clinic, Key key) {}

  /** A full export of a clinic. */
  public record Export(
      Clinic clinic, ClinicVoice.Kept voice, List<KeyEntry> keys, List<Story> cases) {}

  /** Opens a clinic and issues its organiser's key. */
  public Opened open(String name, String organiser, int retentionDays) {
    return open(name, organiser, retentionDays, false);
  }

  Opened open(String name, String organiser, int retentionDays, boolean sample) {
    Clinic clinic =
        new Clinic(
            Key.newId(random),
            name,
            retentionDays,
            1,
            clock.instant().truncatedTo(ChronoUnit.MILLIS),
            sample);
    return database.transaction(
        handle -> {
          handle
              .createUpdate(
                  "insert into clinics (id, name, retention_days, version, opened_ms, sample)"
                      + " values (:id, :name, :days, 1, :now, :sample)")
              .bind("id", clinic.id())
              .bind("name", name)
              .bind("days", retentionDays)
              .bind("now", clinic.openedAt().toEpochMilli())
              .bind("sample", sample)
              .execute();
          Key key = keys.issue(handle, clinic.id(), ORGANISER, organiser, null);
          audit.note(
              handle,
              new Caller(clinic.id(), ORGANISER, key.id(), organiser, null),
              Deed.CLINIC_OPENED,
              null);
          return new Opened(clinic, key);
        });
  }

  /** The caller's clinic. */
  public Clinic read(Caller caller) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.CLINIC_READ, null);
          return row(handle, caller);
        });
  }

  /**
   * Changes name and retention.
   *
   * @param seen the version the change is based on
   * @throws Overtaken if it has been changed since
   */
  public Clinic change(Caller caller, int seen, String name, int retentionDays) {
    caller.mustBe(ORGANISER);
    return database.transaction(
        handle -> {
          int changed =
              handle
                  .createUpdate(
                      "update clinics set name = :name, retention_days = :days,"
                          + " version = version + 1 where id = :id and version = :seen")
                  .bind("name", TextLimits.name(name))
                  .bind("days", retentionDays)
                  .bind("id", caller.clinic())
                  .bind("seen", seen)
                  .execute();
          Clinic now = row(handle, caller);
          if (changed == 0) {
            throw new Overtaken(now.version(), null);
          }
          audit.note(handle, caller, Deed.CLINIC_CHANGED, null);
          return now;
        });
  }

  /** Deletes a clinic with everything in it, including its audit log and its keys. */
  public void delete(Caller caller) {
    caller.mustBe(ORGANISER);
    database.transaction(
        handle ->
            handle
                .createUpdate("delete from clinics where id = :id")
                .bind("id", caller.clinic())
                .execute());
  }

  /** Everything except the audit log. */
  public Export export(Caller caller) {
    caller.mustBe(ORGANISER);
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.CLINIC_EXPORTED, null);
          return new Export(
              row(handle, caller),
              Voices.row(handle, caller.clinic()),
              keys.rows(handle, caller.clinic()),
              CaseRows.all(handle, caller.clinic()).stream()
                  .map(one -> StoryRows.of(handle, one, false))
                  .toList());
        });
  }

  /** The audit log, newest first, at most {@value Audit#MOST_LISTED} entries. */
  public List<AuditEntry> audit(Caller caller) {
    caller.mustBe(ORGANISER);
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.AUDIT_READ, null);
          return audit.of(handle, caller.clinic());
        });
  }

  private static Clinic row(Handle handle, Caller caller) {
    return handle
        .createQuery("select * from clinics where id = :id")
        .bind("id", caller.clinic())
        .map(
            (row, context) ->
                new Clinic(
                    row.getString("id"),
                    row.getString("name"),
                    row.getInt("retention_days"),
                    row.getInt("version"),
                    Instant.ofEpochMilli(row.getLong("opened_ms")),
                    row.getBoolean("sample")))
        .findOne()
        .orElseThrow(NotHere::new);
  }
}
