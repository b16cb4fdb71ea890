package easewright.clinic;

import static easewright.clinic.Role.HELPER;
import static easewright.clinic.Role.ORGANISER;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.clinic.AuditEntry.Deed;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** The rounds of a case: adding them, replying to them, and recording their outcomes. */
public final class Rounds {
  private final Database database;
  private final Cases cases;
  private final Audit audit;
  private final Clock clock;

  Rounds(Database database, Cases cases, Audit audit, Clock clock) {
    this.database = database;
    this.cases = cases;
    this.audit = audit;
    this.clock = clock;
  }

  /** Opens a case with its first round, atomically. */
  public Case open(Caller caller, String nickname, Fitted first) {
    return database.transaction(
        handle -> {
          Case opened = cases.open(handle, caller, nickname);
          add(handle, caller, opened.id(), first);
          return CaseRows.read(handle, caller, opened.id());
        });
  }

  /**
   * What a round reported, for the next to continue from.
   *
   * @param replied whether a helper has replied, and so has read it
   */
  public record Told(JsonNode request, boolean replied) {}

  /** What the rounds of a case reported, oldest first. */
  public List<Told> told(Caller caller, String caseId) {
    return database.transaction(
        handle -> {
          Case current = CaseRows.read(handle, caller, caseId);
          return StoryRows.reports(handle, current.id());
        });
  }

  /** Adds a round with its advice; reopens a closed case, and marks its wearer as waiting. */
  public Round add(Caller caller, String caseId, Fitted fitted) {
    return database.transaction(handle -> add(handle, caller, caseId, fitted));
  }

  private Round add(Handle handle, Caller caller, String caseId, Fitted fitted) {
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
    count(handle, caseId);
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
  }

  /**
   * Stores a reply as posted, or corrects it; the wearer is then no longer waiting.
   *
   * @param seen the version of the case it is based on
   * @throws Overtaken if the case has changed since, or somebody else holds it
   */
  public Story reply(Caller caller, String caseId, int number, int seen, String text) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, caseId, seen);
          Cases.mustBeFreeFor(caller, current);
          boolean posted = StoryRows.isReplied(handle, caseId, number);
          int changed =
              handle
                  .createUpdate(
                      "update rounds set reply = :text, replied_by = :by, replied_ms = :now"
                          + " where case_id = :case and no = :no")
                  .bind("text", TextLimits.text(text))
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
          return changed(handle, caller, caseId, posted ? Deed.REPLY_CORRECTED : Deed.REPLY_POSTED);
        });
  }

  /**
   * Removes a reply, if there is one. If it was to the newest round, the wearer waits again, from
   * the time she asked.
   *
   * @param seen the version of the case it is based on
   * @throws NotHere if there is no such round
   * @throws Overtaken if the case has changed since, or somebody else holds it
   */
  public Story withdrawReply(Caller caller, String caseId, int number, int seen) {
    caller.mustBe(ORGANISER, HELPER);
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, caseId, seen);
          Cases.mustBeFreeFor(caller, current);
          if (!StoryRows.isReplied(handle, caseId, number)) {
            mustBeOne(number >= 1 && number <= current.rounds() ? 1 : 0);
            return StoryRows.of(handle, current, false);
          }
          handle
              .createUpdate(
                  "update rounds set reply = null, replied_by = null, replied_ms = null"
                      + " where case_id = :case and no = :no")
              .bind("case", caseId)
              .bind("no", number)
              .execute();
          if (number == current.rounds()) {
            StoryRows.wait(handle, caseId, StoryRows.askedMs(handle, caseId, number));
          }
          return changed(handle, caller, caseId, Deed.REPLY_WITHDRAWN);
        });
  }

  /**
   * Stores one reply for the latest round of each of several cases.
   *
   * @param addressed no duplicates, at most {@value GroupReply#MOST}
   */
  public GroupReply replyToAll(Caller caller, List<GroupReply.Addressed> addressed, String text) {
    caller.mustBe(ORGANISER, HELPER);
    return new GroupReply(addressed.stream().map(one -> given(caller, one, text)).toList());
  }

  private GroupReply.Given given(Caller caller, GroupReply.Addressed one, String text) {
    try {
      Case current = database.transaction(handle -> CaseRows.read(handle, caller, one.caseId()));
      if (current.last() == null || current.last().redFlag()) {
        return given(
            current,
            current.last() == null
                ? GroupReply.Refusal.NOTHING_ASKED
                : GroupReply.Refusal.RED_FLAG);
      }
      // A round added in between raises the version, so the reply goes to the round that was read.
      Case now = reply(caller, current.id(), current.rounds(), one.seen(), text).current();
      return given(now, null);
    } catch (Overtaken overtaken) {
      return new GroupReply.Given(
          one.caseId(), GroupReply.Refusal.OVERTAKEN, overtaken.version(), overtaken.holder());
    } catch (NotHere none) {
      return new GroupReply.Given(one.caseId(), GroupReply.Refusal.NOT_FOUND, null, null);
    }
  }

  private static GroupReply.Given given(Case current, GroupReply.Refusal refusal) {
    String holder = current.holder() == null ? null : current.holder().name();
    return new GroupReply.Given(current.id(), refusal, current.version(), holder);
  }

  /**
   * Stores the outcome of a round's advice. A wearer who reports no progress for the latest round
   * waits for another reply.
   *
   * @param said the same in words, or null
   */
  public Story outcome(Caller caller, String caseId, int number, Outcome outcome, String said) {
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, caseId);
          int changed =
              handle
                  .createUpdate(
                      "update rounds set outcome = :outcome, outcome_said = :said"
                          + " where case_id = :case and no = :no")
                  .bind("outcome", outcome.name())
                  .bind("said", said == null ? null : TextLimits.text(said))
                  .bind("case", caseId)
                  .bind("no", number)
                  .execute();
          mustBeOne(changed);
          count(handle, caseId);
          if (number == current.rounds() && !current.closed() && !outcome.isProgress()) {
            StoryRows.wait(handle, caseId, clock.millis());
          }
          return changed(handle, caller, caseId, Deed.OUTCOME_TOLD);
        });
  }

  private static void count(Handle handle, String caseId) {
    handle
        .createUpdate("update cases set without_progress = :count where id = :case")
        .bind("count", Progress.triesWithout(StoryRows.tries(handle, caseId)))
        .bind("case", caseId)
        .execute();
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
