package easewright.clinic;

import java.sql.SQLException;

/**
 * The store did not do what was asked. Drivers repeat values in their messages, and values can be
 * measurements: so only the SQL state and the place are told.
 */
public final class StoreFailure extends RuntimeException {
  StoreFailure(Throwable cause) {
    super("The store failed, SQL state " + state(cause) + ".");
    setStackTrace(first(cause).getStackTrace());
  }

  private static Throwable first(Throwable cause) {
    return cause.getCause() == null ? cause : first(cause.getCause());
  }

  private static String state(Throwable cause) {
    for (Throwable one = cause; one != null; one = one.getCause()) {
      if (one instanceof SQLException sql && sql.getSQLState() != null) {
        return sql.getSQLState();
      }
    }
    return "unknown (" + cause.getClass().getSimpleName() + ")";
  }
}
