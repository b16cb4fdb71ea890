package easewright.clinic;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import easewright.clinic.AuditEntry.Deed;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import org.jdbi.v3.core.Handle;

/** The rounds of a case: added whole, replied to, and told the outcome of. */
public final class Rounds {
  private final Database database;
  private final Audit audit;
  private final Clock clock;

  Rounds(Database database, Audit audit, Clock clock) {
    this.database = database;
    this.audit = audit;
    this.clock = clock;
  }

  /** Adds a round with its advice; a closed case is open again, and its wearer waits. */
  public Round add(Caller caller, String caseId, Fitted fitted) {
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, caseId);
          Round round =
              new Round(
                  current.rounds() + 1,
                  now(),
                  new Round.Author(caller.name(), caller.role()),
                  fitted,
                  null,
                  null,
                  null);
          StoryRows.add(handle, caseId, round);
          StoryRows.wait(handle, caseId, round.addedAt().toEpochMilli());
          handle
              .createUpdate(
                  "update cases set rounds = :no, version = version + 1, changed_ms = :now"
                      + " where id = :case")
              .bind("no", round.number())
              .bind("now", round.addedAt().toEpochMilli())
              .bind("case", caseId)
              .execute();
          audit.note(handle, caller, Deed.ROUND_ADDED, caseId);
          return round;
        });
  }

  /**
   * Keeps a reply as it was posted; the wearer then waits no longer.
   *
   * @param seen the version of the case it was written on
   * @throws Overtaken when the case has changed since, or somebody else has it
   */
  public Story reply(Caller caller, String caseId, int number, int seen, String text) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, caseId, seen);
          Cases.mustBeFreeFor(caller, current);
          int changed =
              handle
                  .createUpdate(
                      "update rounds set reply = :text, replied_by = :by, replied_ms = :now"
                          + " where case_id = :case and no = :no")
                  .bind("text", Words.text(text))
                  .bind("by", caller.name())
                  .bind("now", clock.millis())
                  .bind("case", caseId)
                  .bind("no", number)
                  .execute();
          mustBeOne(changed);
          if (number == current.rounds()) {
            handle
                .createUpdate("update cases set waiting_ms = null where id = :case")
                .bind("case", caseId)
                .execute();
          }
          return changed(handle, caller, caseId, Deed.REPLY_POSTED);
        });
  }

  /**
   * Keeps what became of a round's advice.
   *
   * @param said the same in words, or null
   */
  public Story outcome(Caller caller, String caseId, int number, Outcome outcome, String said) {
    return database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, caseId);
          int changed =
              handle
                  .createUpdate(
                      "update rounds set outcome = :outcome, outcome_said = :said"
                          + " where case_id = :case and no = :no")
                  .bind("outcome", outcome.name())
                  .bind("said", said == null ? null : Words.text(said))
                  .bind("case", caseId)
                  .bind("no", number)
                  .execute();
          mustBeOne(changed);
          List<Outcome> told =
              StoryRows.rounds(handle, caseId).stream()
                  .map(Round::outcome)
                  .filter(Objects::nonNull)
                  .toList();
          handle
              .createUpdate("update cases set without_progress = :count where id = :case")
              .bind("count", Outcome.withoutProgress(told))
              .bind("case", caseId)
              .execute();
          return changed(handle, caller, caseId, Deed.OUTCOME_TOLD);
        });
  }

  private Story changed(Handle handle, Caller caller, String caseId, Deed deed) {
    handle
        .createUpdate("update cases set version = version + 1, changed_ms = :now where id = :case")
        .bind("now", clock.millis())
        .bind("case", caseId)
        .execute();
    audit.note(handle, caller, deed, caseId);
    return StoryRows.of(handle, CaseRows.read(handle, caller, caseId), caller.isWearer());
  }

  private static void mustBeOne(int changed) {
    if (changed != 1) {
      throw new NotHere();
    }
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }
}
