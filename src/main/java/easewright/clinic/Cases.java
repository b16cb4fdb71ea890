package easewright.clinic;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;
import static easewright.clinic.Role.WEARER;

import easewright.clinic.AuditEntry.Deed;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * A clinic's cases: who waits, who answers, what was noted. A change names the version of the case
 * it is based on, and is rejected if that is no longer current (optimistic locking).
 */
public final class Cases {
  private final Database database;
  private final Audit audit;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  Cases(Database database, Audit audit, Clock clock) {
    this.database = database;
    this.audit = audit;
    this.clock = clock;
  }

  /** Opens a case for a wearer identified by a nickname only. */
  public Case open(Caller caller, String nickname) {
    return database.transaction(handle -> open(handle, caller, nickname));
  }

  /** Opens a case within a transaction. */
  Case open(Handle handle, Caller caller, String nickname) {
    caller.mustBe(ORGANISER, HELPER);
    String id = Key.newId(random);
    handle
        .createUpdate(
            "insert into cases (id, clinic_id, nickname, state, version, rounds,"
                + " without_progress, opened_ms, changed_ms)"
                + " values (:id, :clinic, :nickname, 'OPEN', 1, 0, 0, :now, :now)")
        .bind("id", id)
        .bind("clinic", caller.clinic())
        .bind("nickname", TextLimits.name(nickname))
        .bind("now", clock.millis())
        .execute();
    audit.note(handle, caller, Deed.CASE_OPENED, id);
    return CaseRows.read(handle, caller, id);
  }

  /** The open cases in the order in which to answer them, grouped by question. */
  public Queue triage(Caller caller) {
    return Queue.of(queue(caller));
  }

  /** All cases in queue order, closed ones last. */
  public List<Case> queue(Caller caller) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          audit.note(handle, caller, Deed.CASES_READ, null);
          return CaseRows.all(handle, caller.clinic()).stream().sorted(Queue.ORDER).toList();
        });
  }

  /** One case with its history; a wearer sees only what concerns them. */
  public Story story(Caller caller, String id) {
    return read(caller, id, Deed.CASE_READ);
  }

  /** The same, for export. */
  public Story export(Caller caller, String id) {
    return read(caller, id, Deed.CASE_EXPORTED);
  }

  private Story read(Caller caller, String id, Deed deed) {
    return database.transaction(
        handle -> {
          Case current = CaseRows.read(handle, caller, id);
          audit.note(handle, caller, deed, id);
          return StoryRows.of(handle, current, caller.isWearer());
        });
  }

  /**
   * Takes a case to answer it.
   *
   * @throws Overtaken if somebody else holds it, or it has changed
   */
  public Case take(Caller caller, String id, int seen) {
    return change(
        caller,
        id,
        seen,
        Deed.CASE_TAKEN,
        (handle, current) -> hold(handle, caller, current, caller.key()));
  }

  /**
   * Hands a case to the holder of another key, or back to the queue.
   *
   * @param to the id of a key of this clinic, or null
   */
  public Case handOver(Caller caller, String id, int seen, String to) {
    return change(
        caller,
        id,
        seen,
        Deed.CASE_HANDED_OVER,
        (handle, current) -> {
          if (to != null && !canHold(handle, caller, to)) {
            throw new NotHere();
          }
          hold(handle, caller, current, to);
        });
  }

  /** Closes a finished case. */
  public Case close(Caller caller, String id, int seen) {
    return change(
        caller,
        id,
        seen,
        Deed.CASE_CLOSED,
        (handle, current) ->
            handle
                .createUpdate(
                    "update cases set state = 'CLOSED', holder = null, waiting_ms = null"
                        + " where id = :id and clinic_id = :clinic")
                .bind("id", current.id())
                .bind("clinic", caller.clinic())
                .execute());
  }

  /** Reopens a closed case; it has no holder, and its wearer is not waiting yet. */
  public Case reopen(Caller caller, String id, int seen) {
    return change(
        caller,
        id,
        seen,
        Deed.CASE_REOPENED,
        (handle, current) ->
            handle
                .createUpdate(
                    "update cases set state = 'OPEN' where id = :id and clinic_id = :clinic")
                .bind("id", current.id())
                .bind("clinic", caller.clinic())
                .execute());
  }

  private interface Change {
    void make(Handle handle, Case current);
  }

  private Case change(Caller caller, String id, int seen, Deed deed, Change change) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, id, seen);
          mustBeFreeFor(caller, current);
          change.make(handle, current);
          touch(handle, caller, id);
          audit.note(handle, caller, deed, id);
          return CaseRows.read(handle, caller, id);
        });
  }

  /** A case with a holder is reserved for them, but an organiser may step in. */
  static void mustBeFreeFor(Caller caller, Case current) {
    boolean free = current.holder() == null || current.holder().key().equals(caller.key());
    if (!free && caller.role() != ORGANISER) {
      throw CaseRows.overtaken(current);
    }
  }

  private void hold(Handle handle, Caller caller, Case current, String key) {
    handle
        .createUpdate("update cases set holder = :key where id = :id and clinic_id = :clinic")
        .bind("key", key)
        .bind("id", current.id())
        .bind("clinic", caller.clinic())
        .execute();
  }

  private static boolean canHold(Handle handle, Caller caller, String key) {
    return Key.isId(key)
        && handle
            .createQuery(
                "select count(*) from access_keys"
                    + " where id = :key and clinic_id = :clinic and role <> 'WEARER'")
            .bind("key", key)
            .bind("clinic", caller.clinic())
            .mapTo(Integer.class)
            .one()
            .equals(1);
  }

  private void touch(Handle handle, Caller caller, String id) {
    handle
        .createUpdate(
            "update cases set version = version + 1, changed_ms = :now"
                + " where id = :id and clinic_id = :clinic")
        .bind("now", clock.millis())
        .bind("id", id)
        .bind("clinic", caller.clinic())
        .execute();
  }

  /** Adds a note outside the rounds. A wearer's note marks them as waiting for a reply. */
  public Note note(Caller caller, String id, String text) {
    return database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, id);
          Note note =
              new Note(
                  clock.instant().truncatedTo(java.time.temporal.ChronoUnit.MILLIS),
                  new Round.Author(caller.name(), caller.role()),
                  TextLimits.text(text));
          StoryRows.add(handle, id, note);
          if (caller.isWearer()) {
            StoryRows.wait(handle, id, clock.millis());
          }
          touch(handle, caller, id);
          audit.note(handle, caller, Deed.NOTE_WRITTEN, id);
          return note;
        });
  }

  /** Deletes a case with its contents; a wearer may delete their own. */
  public void delete(Caller caller, String id) {
    caller.mustBe(ORGANISER, WEARER);
    database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, id);
          handle
              .createUpdate("delete from cases where id = :id and clinic_id = :clinic")
              .bind("id", id)
              .bind("clinic", caller.clinic())
              .execute();
          audit.note(handle, caller, Deed.CASE_DELETED, id);
          return null;
        });
  }
}
