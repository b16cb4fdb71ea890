package easewright.clinic;

import easewright.clinic.AuditEntry.Deed;
import easewright.photo.CleanPhoto;
import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Photos of a case: kept with it only, read by whoever may read it, and deleted with it. */
public final class CasePhotos {
  /** Most photos of one case. */
  public static final int MOST = 12;

  private final Database database;
  private final Audit audit;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  CasePhotos(Database database, Audit audit, Clock clock) {
    this.database = database;
    this.audit = audit;
    this.clock = clock;
  }

  /**
   * Adds a photo to a round. After a wearer's photo she waits for a reply.
   *
   * @throws NotHere if the case has no such round
   * @throws OnePhotoTooMany if the case has {@value #MOST} already
   */
  public Photo add(Caller caller, String caseId, int round, String alt, CleanPhoto photo) {
    return database.transaction(
        handle -> {
          Case current = CaseRows.lock(handle, caller, caseId);
          if (round < 1 || round > current.rounds()) {
            throw new NotHere();
          }
          if (of(handle, caseId).size() >= MOST) {
            throw new OnePhotoTooMany();
          }
          Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
          Photo added =
              new Photo(
                  Key.newId(random),
                  round,
                  now,
                  new Round.Author(caller.name(), caller.role()),
                  alt,
                  photo.width(),
                  photo.height());
          insert(handle, caseId, added, photo);
          if (caller.isWearer()) {
            StoryRows.wait(handle, caseId, now.toEpochMilli());
          }
          changed(handle, caller, caseId, Deed.PHOTO_ADDED);
          return added;
        });
  }

  private static void insert(Handle handle, String caseId, Photo added, CleanPhoto photo) {
    handle
        .createUpdate(
            "insert into photos (id, case_id, no, added_ms, added_by, added_role, alt, width,"
                + " height, large, small) values (:id, :case, :no, :at, :by, :role, :alt, :width,"
                + " :height, :large, :small)")
        .bind("id", added.id())
        .bind("case", caseId)
        .bind("no", added.round())
        .bind("at", added.addedAt().toEpochMilli())
        .bind("by", added.by().name())
        .bind("role", added.by().role().name())
        .bind("alt", added.alt())
        .bind("width", added.width())
        .bind("height", added.height())
        .bind("large", photo.large())
        .bind("small", photo.small())
        .execute();
  }

  private void changed(Handle handle, Caller caller, String caseId, Deed deed) {
    handle
        .createUpdate("update cases set version = version + 1, changed_ms = :now where id = :case")
        .bind("now", clock.millis())
        .bind("case", caseId)
        .execute();
    audit.note(handle, caller, deed, caseId);
  }

  /**
   * A photo as JPEG.
   *
   * @throws NotHere if the case has none of this id
   */
  public byte[] large(Caller caller, String caseId, String id) {
    return database.transaction(
        handle -> {
          CaseRows.read(handle, caller, caseId);
          byte[] jpeg =
              jpeg(
                  handle.createQuery("select large from photos where id = :id and case_id = :case"),
                  caseId,
                  id);
          audit.note(handle, caller, Deed.PHOTO_READ, caseId);
          return jpeg;
        });
  }

  /** Its small copy; read with every page of the case, so not recorded apart from that. */
  public byte[] small(Caller caller, String caseId, String id) {
    return database.transaction(
        handle -> {
          CaseRows.read(handle, caller, caseId);
          return jpeg(
              handle.createQuery("select small from photos where id = :id and case_id = :case"),
              caseId,
              id);
        });
  }

  private static byte[] jpeg(Query query, String caseId, String id) {
    return query
        .bind("id", possible(id))
        .bind("case", caseId)
        .mapTo(byte[].class)
        .findOne()
        .orElseThrow(NotHere::new);
  }

  private static String possible(String id) {
    if (!Key.isId(id)) {
      throw new NotHere();
    }
    return id;
  }

  /** Deletes a photo for good; a wearer may delete each of their own case. */
  public void delete(Caller caller, String caseId, String id) {
    database.transaction(
        handle -> {
          CaseRows.lock(handle, caller, caseId);
          int gone =
              handle
                  .createUpdate("delete from photos where id = :id and case_id = :case")
                  .bind("id", possible(id))
                  .bind("case", caseId)
                  .execute();
          if (gone == 0) {
            throw new NotHere();
          }
          changed(handle, caller, caseId, Deed.PHOTO_DELETED);
          return null;
        });
  }

  /** The photos of a case, oldest first; callers must have checked access to it. */
  static List<Photo> of(Handle handle, String caseId) {
    return handle
        .createQuery(
            "select id, no, added_ms, added_by, added_role, alt, width, height from photos"
                + " where case_id = :case order by no, added_ms, id")
        .bind("case", caseId)
        .map((row, context) -> photo(row))
        .list();
  }

  private static Photo photo(ResultSet row) throws SQLException {
    return new Photo(
        row.getString("id"),
        row.getInt("no"),
        Instant.ofEpochMilli(row.getLong("added_ms")),
        new Round.Author(row.getString("added_by"), Role.valueOf(row.getString("added_role"))),
        row.getString("alt"),
        row.getInt("width"),
        row.getInt("height"));
  }
}
