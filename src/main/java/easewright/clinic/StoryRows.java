package easewright.clinic;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** Rounds and notes of a case as rows; callers must have checked access to the case. */
final class StoryRows {
  private static final ObjectMapper JSON = new ObjectMapper();

  private StoryRows() {}

  static Story of(Handle handle, Case current, boolean asWearer) {
    List<Note> notes =
        notes(handle, current.id()).stream()
            .filter(note -> !asWearer || note.by().role() == Role.WEARER)
            .toList();
    return new Story(
        current, rounds(handle, current.id()), notes, CasePhotos.of(handle, current.id()));
  }

  static List<Round> rounds(Handle handle, String caseId) {
    return handle
        .createQuery("select * from rounds where case_id = :case order by no")
        .bind("case", caseId)
        .map((row, context) -> round(row))
        .list();
  }

  /** Only the data about progress, oldest first. */
  static List<Progress.Try> tries(Handle handle, String caseId) {
    return handle
        .createQuery("select request, outcome from rounds where case_id = :case order by no")
        .bind("case", caseId)
        .map(
            (row, context) ->
                new Progress.Try(json(row.getString("request")), outcome(row.getString("outcome"))))
        .list();
  }

  /** Only the reports, oldest first. */
  static List<Rounds.Told> reports(Handle handle, String caseId) {
    return handle
        .createQuery("select request, reply from rounds where case_id = :case order by no")
        .bind("case", caseId)
        .map(
            (row, context) ->
                new Rounds.Told(json(row.getString("request")), row.getString("reply") != null))
        .list();
  }

  /** Whether a round has a reply. */
  static boolean isReplied(Handle handle, String caseId, int number) {
    return handle
        .createQuery(
            "select no from rounds where case_id = :case and no = :no and reply is not null")
        .bind("case", caseId)
        .bind("no", number)
        .mapTo(Integer.class)
        .findOne()
        .isPresent();
  }

  /** When a round was added, in milliseconds since 1970. */
  static long askedMs(Handle handle, String caseId, int number) {
    return handle
        .createQuery("select added_ms from rounds where case_id = :case and no = :no")
        .bind("case", caseId)
        .bind("no", number)
        .mapTo(Long.class)
        .one();
  }

  private static Outcome outcome(String name) {
    return name == null ? null : Outcome.valueOf(name);
  }

  private static Round round(ResultSet row) throws SQLException {
    String reply = row.getString("reply");
    return new Round(
        row.getInt("no"),
        Instant.ofEpochMilli(row.getLong("added_ms")),
        new Round.Author(row.getString("added_by"), Role.valueOf(row.getString("added_role"))),
        new Fitted(
            row.getString("post"),
            json(row.getString("request")),
            json(row.getString("advice")),
            new Case.Gist(
                row.getBoolean("red_flag"),
                row.getString("cause"),
                row.getString("sign"),
                row.getString("sheet"),
                row.getString("size_cut"))),
        reply == null
            ? null
            : new Round.Reply(
                reply,
                row.getString("replied_by"),
                Instant.ofEpochMilli(row.getLong("replied_ms"))),
        outcome(row.getString("outcome")),
        row.getString("outcome_said"));
  }

  private static JsonNode json(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException malformed) {
      throw new IllegalStateException(
          "A stored round is not JSON."); // its text must not be revealed
    }
  }

  private static List<Note> notes(Handle handle, String caseId) {
    return handle
        .createQuery("select * from notes where case_id = :case order by id")
        .bind("case", caseId)
        .map(
            (row, context) ->
                new Note(
                    Instant.ofEpochMilli(row.getLong("written_ms")),
                    new Round.Author(
                        row.getString("written_by"), Role.valueOf(row.getString("written_role"))),
                    row.getString("said")))
        .list();
  }

  static void add(Handle handle, String caseId, Note note) {
    handle
        .createUpdate(
            "insert into notes (case_id, written_ms, written_by, written_role, said)"
                + " values (:case, :at, :by, :role, :said)")
        .bind("case", caseId)
        .bind("at", note.at().toEpochMilli())
        .bind("by", note.by().name())
        .bind("role", note.by().role().name())
        .bind("said", note.text())
        .execute();
  }

  static void add(Handle handle, String caseId, Round round) {
    Fitted fitted = round.fitted();
    Seen seen = Seen.in(fitted);
    handle
        .createUpdate(
            "insert into rounds (case_id, no, added_ms, added_by, added_role, post, request,"
                + " advice, red_flag, cause, sheet, size_cut, sign, signs, choices, cloth)"
                + " values (:case, :no, :at, :by, :role, :post, :request, :advice, :redFlag,"
                + " :cause, :sheet, :sizeCut, :sign, :signs, :choices, :cloth)")
        .bind("case", caseId)
        .bind("no", round.number())
        .bind("at", round.addedAt().toEpochMilli())
        .bind("by", round.by().name())
        .bind("role", round.by().role().name())
        .bind("post", fitted.post())
        .bind("request", fitted.request().toString())
        .bind("advice", fitted.advice().toString())
        .bind("redFlag", fitted.gist().redFlag())
        .bind("cause", fitted.gist().cause())
        .bind("sheet", fitted.gist().sheet())
        .bind("sizeCut", fitted.gist().sizeCut())
        .bind("sign", fitted.gist().sign())
        .bind("signs", seen.signsInRow())
        .bind("choices", seen.choicesInRow())
        .bind("cloth", seen.cloth())
        .execute();
  }

  /** Marks the wearer as waiting from now on, unless already waiting. */
  static void wait(Handle handle, String caseId, long now) {
    handle
        .createUpdate(
            "update cases set state = 'OPEN', waiting_ms = coalesce(waiting_ms, :now)"
                + " where id = :case")
        .bind("now", now)
        .bind("case", caseId)
        .execute();
  }
}
