package easewright.clinic;

import java.sql.SQLException;
import java.sql.SQLTimeoutException;
import java.util.Set;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.JdbiException;

/**
 * The store did not do what was asked. Drivers repeat values in their messages, and values can be
 * measurements: so only the SQL state and the place are told.
 */
public final class StoreFailure extends RuntimeException {
  /** "query_canceled" and "lock_not_available" (PostgreSQL, Appendix A, "Error Codes"). */
  private static final Set<String> GIVEN_UP = Set.of("57014", "55P03");

  StoreFailure(Throwable cause) {
    super("The store failed, SQL state " + state(cause) + ".");
    setStackTrace(first(cause).getStackTrace());
  }

  /**
   * Whether the engine was only waited for too long: for another's lock, for a statement to end, or
   * for a free connection, which the pool tells without an SQL state.
   */
  static boolean isWaitedFor(JdbiException failed) {
    for (Throwable one = failed; one != null; one = one.getCause()) {
      if (one instanceof SQLTimeoutException
          || one instanceof SQLException sql
              && sql.getSQLState() != null
              && GIVEN_UP.contains(sql.getSQLState())) {
        return true;
      }
    }
    return failed instanceof ConnectionException
        && first(failed) instanceof SQLException none
        && none.getSQLState() == null;
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
