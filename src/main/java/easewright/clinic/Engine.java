package easewright.clinic;

import static org.sqlite.SQLiteErrorCode.SQLITE_CONSTRAINT_FOREIGNKEY;

import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteException;

/** What keeps the rows: a file of its own, or a server. */
interface Engine extends AutoCloseable {
  /** Whether there can be any clinic; asking creates nothing. */
  boolean mayHoldClinics();

  /**
   * Opens it, its tables made or brought up to date; called again after {@link #failed} said so.
   *
   * @throws Exception why it can't be opened; {@link StoreAway} if it knows a better reason than
   *     {@link #fault} would find
   */
  Jdbi open() throws Exception;

  /** What is wrong with the engine, if it is not the statement that failed. */
  Optional<StoreCondition> fault(Throwable failed);

  /** Whether work was only waited for too long: for a lock, a connection or a statement's end. */
  boolean isWaitedFor(Throwable failed);

  /** Hears of a fault; whether the engine has to be opened anew before it is used again. */
  boolean failed(Throwable failed);

  @Override
  void close();

  /** What makes the tables or brings them up to date; it refuses those of a newer service. */
  static Flyway tables(DataSource source, Map<String, String> words, String... folders) {
    return Flyway.configure(Engine.class.getClassLoader())
        .dataSource(source)
        .locations(folders)
        .placeholders(words)
        .ignoreMigrationPatterns(new String[0])
        .load();
  }

  /**
   * Whether a row belongs to one that is gone: its clinic or case was deleted after the caller was
   * let in. Every row's owner is looked up before it is written, so there is no other cause
   * (SQLSTATE 23503 is {@code foreign_key_violation}: PostgreSQL, appendix A).
   */
  static boolean isOfSomethingDeleted(Throwable failed) {
    boolean inFile =
        cause(failed, SQLiteException.class)
            .filter(told -> told.getResultCode() == SQLITE_CONSTRAINT_FOREIGNKEY)
            .isPresent();
    return inFile
        || cause(failed, SQLException.class)
            .filter(told -> "23503".equals(told.getSQLState()))
            .isPresent();
  }

  /** The first of a kind among a failure and its causes. */
  static <T extends Throwable> Optional<T> cause(Throwable failed, Class<T> kind) {
    for (Throwable one = failed; one != null; one = one.getCause()) {
      if (kind.isInstance(one)) {
        return Optional.of(kind.cast(one));
      }
    }
    return Optional.empty();
  }
}
