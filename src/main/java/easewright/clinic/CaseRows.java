package easewright.clinic;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Cases as rows. Every statement names the clinic, so that no id reaches another clinic. */
final class CaseRows {
  private static final String CASES =
      "select c.*, k.name as holder_name, r.no, r.red_flag, r.cause, r.sign, r.sheet, r.size_cut,"
          + " substr(r.post, 1, "
          + Case.FIRST_WORDS
          + ") as asked"
          + " from cases c"
          + " left join access_keys k on k.id = c.holder"
          + " left join rounds r on r.case_id = c.id and r.no = c.rounds"
          + " where c.clinic_id = :clinic";

  private CaseRows() {}

  /**
   * The case, locked until the transaction ends.
   *
   * @throws NotHere if the caller's clinic has no such case, or the caller may not reach it
   */
  static Case lock(Handle handle, Caller caller, String id) {
    caller.mustReach(id);
    handle
        .createQuery("select id from cases where id = :id and clinic_id = :clinic <lock>")
        .bind("id", id)
        .bind("clinic", caller.clinic())
        .mapTo(String.class)
        .findOne()
        .orElseThrow(NotHere::new);
    return read(handle, caller, id);
  }

  /** The same, rejected if its version is no longer the one the caller saw. */
  static Case lock(Handle handle, Caller caller, String id, int seen) {
    Case current = lock(handle, caller, id);
    if (current.version() != seen) {
      throw overtaken(current);
    }
    return current;
  }

  static Overtaken overtaken(Case current) {
    return new Overtaken(
        current.version(), current.holder() == null ? null : current.holder().name());
  }

  static Case read(Handle handle, Caller caller, String id) {
    caller.mustReach(id);
    return find(handle, caller.clinic(), id).orElseThrow(NotHere::new);
  }

  private static Optional<Case> find(Handle handle, String clinic, String id) {
    return handle
        .createQuery(CASES + " and c.id = :id")
        .bind("clinic", clinic)
        .bind("id", id)
        .map((row, context) -> of(row))
        .findOne();
  }

  static List<Case> all(Handle handle, String clinic) {
    return handle
        .createQuery(CASES + " order by c.opened_ms, c.id")
        .bind("clinic", clinic)
        .map((row, context) -> of(row))
        .list();
  }

  private static Case of(ResultSet row) throws SQLException {
    String holder = row.getString("holder");
    long waiting = row.getLong("waiting_ms");
    Instant waitingSince = row.wasNull() ? null : Instant.ofEpochMilli(waiting);
    return new Case(
        row.getString("id"),
        row.getString("nickname"),
        "CLOSED".equals(row.getString("state")),
        row.getInt("version"),
        holder == null ? null : new Case.Holder(holder, row.getString("holder_name")),
        row.getInt("rounds"),
        Instant.ofEpochMilli(row.getLong("opened_ms")),
        Instant.ofEpochMilli(row.getLong("changed_ms")),
        waitingSince,
        row.getInt("without_progress") >= Case.STUCK,
        row.getInt("no") == 0
            ? null
            : new Case.Gist(
                row.getBoolean("red_flag"),
                row.getString("cause"),
                row.getString("sign"),
                row.getString("sheet"),
                row.getString("size_cut")),
        row.getString("asked"));
  }
}
