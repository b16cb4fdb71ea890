package easewright.clinic;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.AgroalDataSource.FlushMode;
import io.agroal.api.configuration.AgroalConnectionPoolConfiguration.ConnectionValidator;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.agroal.api.exceptionsorter.PostgreSQLExceptionSorter;
import io.agroal.api.security.NamePrincipal;
import io.agroal.api.security.SimplePassword;
import java.sql.SQLException;
import java.sql.SQLTimeoutException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.SqlStatements;

/**
 * The store on a PostgreSQL server. The server may restart, or be replaced behind the same address:
 * each connection is tested before use, and dropped once it fails.
 */
final class StoreServer implements Engine {
  private static final int MOST_CONNECTIONS = 8;

  /** One to change tables, one to hold the migration lock. */
  private static final int MOST_TO_MIGRATE = 4;

  /** Timeout for testing a connection, seconds. */
  private static final int TO_PROVE = 1;

  /** Codes of PostgreSQL (its manual, Appendix A, "PostgreSQL Error Codes"). */
  private static final Set<String> GIVEN_UP =
      Set.of("57014", "55P03"); // query_canceled, lock_not_available

  private static final String READ_ONLY = "25006";

  /**
   * The error classes for connections, authorisation, catalog names, insufficient resources,
   * operator intervention, and system errors; also that of a read-only standby.
   */
  private static final List<String> OF_THE_SERVER =
      List.of("08", "28", "3D", "53", "57P", "58", READ_ONLY);

  private final StoreAddress address;
  private final Duration patience;
  private AgroalDataSource pool;

  StoreServer(StoreAddress address, Duration patience) {
    this.address = address;
    this.patience = patience;
  }

  @Override
  public boolean mayHoldClinics() {
    return true;
  }

  /** Tables are changed through connections without time limits, since that may be slow. */
  @Override
  public Jdbi open() throws SQLException {
    try (AgroalDataSource unbounded = pool(MOST_TO_MIGRATE, Map.of())) {
      Engine.tables(
              unbounded,
              Map.of("numbered", "bigint generated always as identity", "bytes", "bytea"),
              "classpath:easewright/clinic")
          .migrate();
    }
    pool = pool(MOST_CONNECTIONS, bounds());
    Jdbi jdbi = Jdbi.create(pool);
    jdbi.getConfig(SqlStatements.class).setQueryTimeout((int) patience.toSeconds());
    return jdbi.define("lock", "for update");
  }

  /**
   * Driver settings that limit every wait. The socket timeout must exceed the statement timeout, to
   * receive the cancellation; it takes effect only if a server disappears silently.
   */
  private Map<String, String> bounds() {
    return Map.of("socketTimeout", Long.toString(patience.toSeconds() + TO_PROVE));
  }

  private AgroalDataSource pool(int most, Map<String, String> bounds) throws SQLException {
    return AgroalDataSource.from(
        new AgroalDataSourceConfigurationSupplier()
            .connectionPoolConfiguration(
                pool ->
                    pool.maxSize(most)
                        .acquisitionTimeout(patience)
                        .validateOnBorrow(true)
                        .connectionValidator(
                            ConnectionValidator.defaultValidatorWithTimeout(TO_PROVE))
                        .exceptionSorter(new PostgreSQLExceptionSorter())
                        .connectionFactoryConfiguration(
                            connection -> {
                              bounds.forEach(connection::jdbcProperty);
                              // Loaded by name, since it may not be registered under every class
                              // loader.
                              return connection
                                  .jdbcProperty(
                                      "connectTimeout", Long.toString(patience.toSeconds()))
                                  .jdbcProperty("tcpKeepAlive", "true")
                                  .connectionProviderClass(org.postgresql.Driver.class)
                                  .jdbcUrl(address.url())
                                  .principal(new NamePrincipal(address.user()))
                                  .credential(new SimplePassword(address.password()));
                            })));
  }

  private static Optional<String> state(Throwable failed) {
    for (Throwable one = failed; one != null; one = one.getCause()) {
      if (one instanceof SQLException sql && sql.getSQLState() != null) {
        return Optional.of(sql.getSQLState());
      }
    }
    return Optional.empty();
  }

  @Override
  public Optional<StoreCondition> fault(Throwable failed) {
    if (Engine.cause(failed, FlywayValidateException.class).isPresent()) {
      return Optional.of(
          new StoreCondition(
              "The tables at " + address + " were made by another version of the service.",
              "Start that version, or name an empty database."));
    }
    return state(failed)
        .filter(state -> OF_THE_SERVER.stream().anyMatch(state::startsWith))
        .map(
            state ->
                new StoreCondition(
                    "The server at " + address + " can't be used now, SQL state " + state + ".",
                    remedy(state) + " The service then goes on by itself."));
  }

  private static String remedy(String state) {
    return switch (state.substring(0, 2)) {
      case "28" -> "Check easewright.clinic.user and easewright.clinic.password.";
      case "3D" -> "Create the database, or check easewright.clinic.url.";
      case "53" -> "Give the server more room, memory or connections; a service takes 8 of these.";
      case "25" -> "It can only be read; let the address lead to the server that can be written.";
      default -> "See that it runs and can be reached from here.";
    };
  }

  /** The pool reports without an SQL state that no connection became free. */
  @Override
  public boolean isWaitedFor(Throwable failed) {
    Optional<String> state = state(failed);
    return Engine.cause(failed, SQLTimeoutException.class).isPresent()
        || state.map(GIVEN_UP::contains).orElse(false)
        || state.isEmpty() && Engine.cause(failed, SQLException.class).isPresent();
  }

  /** The pool drops failed connections; those to a standby must be dropped explicitly. */
  @Override
  public boolean failed(Throwable failed) {
    if (pool != null && state(failed).filter(READ_ONLY::equals).isPresent()) {
      pool.flush(FlushMode.GRACEFUL);
    }
    return false;
  }

  @Override
  public void close() {
    if (pool != null) {
      pool.close();
      pool = null;
    }
  }
}
