package easewright.clinic;

import java.nio.file.Path;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;

/** Possible faults of the store's file, with remedies. */
enum FileFault {
  FULL(
      "has no room left on its disk", "Free some space there; the service then goes on by itself."),
  UNREADABLE(
      "can't be read or written by the disk or the system it is on",
      "Look at that disk, its quota and the system's own log; the service then goes on by itself."),
  DAMAGED(
      "is damaged or was cut short",
      "Copy it away, so that what can be read of it can be saved (sqlite3 clinics.db .recover), then"
          + " put a backup in its place."),
  EMPTY(
      "is empty, though a store is never empty",
      "Put a backup in its place. To begin anew, remove it together with clinics.lock."),
  GONE(
      "is gone, though there was a store in its folder",
      "Put it back, or mount the disk it is on. To begin anew, remove clinics.lock from its folder."),
  FOREIGN("is no store of clinics", "Move it away and put the right file in its place."),
  EARLIER(
      "was made by an earlier version, whose engine this one does not have",
      "Start that version, export the clinics (GET /v1/clinics/{id}/export), then move the file away"
          + " to begin anew."),
  OTHER_VERSION(
      "was made by another version of the service, newer than this one or older than the first that"
          + " was released",
      "Start that version, or move the file away to begin anew."),
  HELD(
      "is in use by another process",
      "Stop the other service, or give each a folder of its own (easewright.clinic.store). For"
          + " several services on the same clinics use a PostgreSQL."),
  NOT_ALLOWED(
      "may not be written by the service, or was replaced while it was in use",
      "Let the user whom the service runs as write the file and its folder."),
  CANT_OPEN(
      "can't be opened",
      "Look whether its folder exists, may be written by the service and has room."),
  NO_ENGINE(
      "can't be opened, since the engine's native library could not be unpacked or loaded",
      "Let the service write into a folder from which programs may be run, and name that:"
          + " -Dorg.sqlite.tmpdir=FOLDER");

  private final String what;
  private final String remedy;

  FileFault(String what, String remedy) {
    this.what = what;
    this.remedy = remedy;
  }

  StoreCondition at(Path file) {
    return new StoreCondition("The file " + file + " " + what + ".", remedy);
  }

  /** The fault a result code stands for; empty if the statement is at fault. */
  static Optional<FileFault> of(SQLiteErrorCode result) {
    SQLiteErrorCode primary = SQLiteErrorCode.getErrorCode(result.code & 0xff);
    return Optional.ofNullable(
        switch (primary) {
          case SQLITE_FULL -> FULL;
          case SQLITE_IOERR, SQLITE_NOLFS, SQLITE_PROTOCOL -> UNREADABLE;
          case SQLITE_CORRUPT, SQLITE_NOTADB, SQLITE_FORMAT -> DAMAGED;
          case SQLITE_CANTOPEN -> CANT_OPEN;
          case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH -> NOT_ALLOWED;
          default -> null;
        });
  }
}
