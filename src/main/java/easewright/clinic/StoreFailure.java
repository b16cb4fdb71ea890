package easewright.clinic;

import java.sql.SQLException;

/**
 * A statement of the store failed because of a bug. Drivers repeat values in their messages, and
 * values can be measurements, so only the code and the location are reported.
 */
public final class StoreFailure extends RuntimeException {
  StoreFailure(Throwable cause) {
    super("The store failed, " + code(cause) + ".");
    setStackTrace(first(cause).getStackTrace());
  }

  private static Throwable first(Throwable cause) {
    return cause.getCause() == null ? cause : first(cause.getCause());
  }

  private static String code(Throwable cause) {
    for (Throwable one = cause; one != null; one = one.getCause()) {
      if (one instanceof org.sqlite.SQLiteException file) {
        return file.getResultCode().name();
      }
      if (one instanceof SQLException sql && sql.getSQLState() != null) {
        return "SQL state " + sql.getSQLState();
      }
    }
    return "of a kind unknown (" + cause.getClass().getSimpleName() + ")";
  }
}
