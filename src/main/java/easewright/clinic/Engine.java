package easewright.clinic;

import static org.sqlite.SQLiteErrorCode.SQLITE_CONSTRAINT_FOREIGNKEY;

import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteException;

/** Storage engine: an embedded file or a server. */
interface Engine extends AutoCloseable {
  /** Whether any clinic can exist; creates nothing. */
  boolean mayHoldClinics();

  /**
   * Opens it, and creates or updates its tables; called again if {@link #failed} requires it.
   *
   * @throws Exception if it cannot be opened; {@link StoreAway} if it knows a better reason than
   *     {@link #fault} would find
   */
  Jdbi open() throws Exception;

  /** The fault of the engine, unless the statement itself failed. */
  Optional<StoreCondition> fault(Throwable failed);

  /** Whether it only waited too long: for a lock, a connection or a statement's end. */
  boolean isWaitedFor(Throwable failed);

  /** Handles a fault; returns whether the engine must be reopened before further use. */
  boolean failed(Throwable failed);

  @Override
  void close();

  /** Creates or updates the tables; refuses tables of a newer version. */
  static Flyway tables(DataSource source, Map<String, String> words, String... folders) {
    return Flyway.configure(Engine.class.getClassLoader())
        .dataSource(source)
        .locations(folders)
        .placeholders(words)
        .ignoreMigrationPatterns(new String[0])
        .load();
  }

  /**
   * Whether a row's owner is gone: its clinic or case was deleted after the caller was admitted.
   * Every row's owner is looked up before writing, so there is no other cause (SQLSTATE 23503 is
   * {@code foreign_key_violation}: PostgreSQL, appendix A).
   */
  static boolean isOfSomethingDeleted(Throwable failed) {
    boolean inFile =
        cause(failed, SQLiteException.class)
            .filter(error -> error.getResultCode() == SQLITE_CONSTRAINT_FOREIGNKEY)
            .isPresent();
    return inFile
        || cause(failed, SQLException.class)
            .filter(error -> "23503".equals(error.getSQLState()))
            .isPresent();
  }

  /** The first exception of a type among a failure and its causes. */
  static <T extends Throwable> Optional<T> cause(Throwable failed, Class<T> kind) {
    for (Throwable one = failed; one != null; one = one.getCause()) {
      if (kind.isInstance(one)) {
        return Optional.of(kind.cast(one));
      }
    }
    return Optional.empty();
  }
}
