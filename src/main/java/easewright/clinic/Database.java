package easewright.clinic;

import easewright.deadline.DeadlinePassed;
import io.agroal.api.AgroalDataSource;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.agroal.api.security.NamePrincipal;
import io.agroal.api.security.SimplePassword;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.Supplier;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.statement.SqlStatements;

/**
 * The engine behind the store. It is opened, and its tables made or brought up to date, when it is
 * first used: a service without clinics pays nothing for it and leaves no file behind.
 */
public final class Database implements AutoCloseable {
  private static final int MOST_CONNECTIONS = 8;

  /** One to change tables, one to hold the lock that keeps others from doing the same. */
  private static final int MOST_TO_MIGRATE = 4;

  private final StoreAddress address;
  private final Duration patience;
  private final ReentrantLock opening = new ReentrantLock();

  /**
   * The embedded engine does one transaction at a time. It writes to its file whenever one commits,
   * what others have begun along with it; killed then, it now and then left rows of those behind.
   */
  private final ReentrantLock turn = new ReentrantLock(true);

  private volatile Opened opened;

  /**
   * An engine that is not opened yet.
   *
   * @param patience how long work waits for its turn, for a connection, and for each statement,
   *     locks of others included; whole seconds, at least one
   * @throws IllegalArgumentException when that is less than a second
   */
  public Database(StoreAddress address, Duration patience) {
    if (patience.toSeconds() < 1) {
      throw new IllegalArgumentException("The store is to be given a second or more.");
    }
    this.address = address;
    this.patience = patience;
  }

  private record Opened(AgroalDataSource pool, Jdbi jdbi) {}

  /** Whether there can be any clinic; asking creates nothing. */
  boolean mayHoldClinics() {
    return opened != null || address.mayHoldClinics();
  }

  /**
   * Does some work wholly or not at all. When it returns, what was written outlives the process.
   *
   * @throws easewright.deadline.DeadlinePassed if others kept it waiting too long; nothing is done
   * @throws StoreFailure if the engine fails; exceptions of the work itself come as they are
   */
  <T> T transaction(Function<Handle, T> work) {
    Supplier<T> whole = () -> inTransaction(work);
    return address.isEmbedded() ? inTurn(turn, whole) : whole.get();
  }

  private <T> T inTurn(ReentrantLock lock, Supplier<T> work) {
    try {
      if (!lock.tryLock(patience.toMillis(), TimeUnit.MILLISECONDS)) {
        throw new DeadlinePassed();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new DeadlinePassed();
    }
    try {
      return work.get();
    } finally {
      lock.unlock();
    }
  }

  private <T> T inTransaction(Function<Handle, T> work) {
    try {
      return open().jdbi().inTransaction(work::apply);
    } catch (JdbiException failed) {
      throw StoreFailure.isWaitedFor(failed) ? new DeadlinePassed() : new StoreFailure(failed);
    }
  }

  private Opened open() {
    Opened ready = opened;
    return ready != null ? ready : inTurn(opening, this::openOnce);
  }

  private Opened openOnce() {
    if (opened == null) {
      migrate();
      AgroalDataSource pool = pool(MOST_CONNECTIONS, bounds());
      Jdbi jdbi = Jdbi.create(pool);
      jdbi.getConfig(SqlStatements.class).setQueryTimeout((int) patience.toSeconds());
      opened = new Opened(pool, jdbi);
    }
    return opened;
  }

  /**
   * What a driver must be told so that no statement waits longer. The server's has to read its
   * socket for longer than a statement may take, to hear that it was given up; it stops only when a
   * server has gone without a word.
   */
  private Map<String, String> bounds() {
    return address.isEmbedded()
        ? Map.of("LOCK_TIMEOUT", Long.toString(patience.toMillis()))
        : Map.of("socketTimeout", Long.toString(2 * patience.toSeconds()));
  }

  private AgroalDataSource pool(int most, Map<String, String> properties) {
    try {
      if (address.isEmbedded()) {
        makeFolder(address.file().getParent());
      }
      return AgroalDataSource.from(
          new AgroalDataSourceConfigurationSupplier()
              .connectionPoolConfiguration(
                  pool ->
                      pool.maxSize(most)
                          .acquisitionTimeout(patience)
                          .validateOnBorrow(true) // a server may have restarted
                          .connectionFactoryConfiguration(
                              connection -> {
                                properties.forEach(connection::jdbcProperty);
                                return connection
                                    .connectionProviderClass(driver())
                                    .jdbcUrl(address.url())
                                    .principal(new NamePrincipal(address.user()))
                                    .credential(new SimplePassword(address.password()));
                              })));
    } catch (SQLException | IOException failed) {
      throw new StoreFailure(failed);
    }
  }

  /** By name of the engine, since a driver may not be registered under every class loader. */
  private Class<?> driver() {
    return address.isEmbedded() ? org.h2.Driver.class : org.postgresql.Driver.class;
  }

  private static void makeFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Set<PosixFilePermission> ours = PosixFilePermissions.fromString("rwx------");
      Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(ours));
    } else {
      Files.createDirectories(folder);
    }
  }

  /** Through connections without bounds: a change of a large table may take its time. */
  private void migrate() {
    try (AgroalDataSource unbounded = pool(MOST_TO_MIGRATE, Map.of())) {
      Flyway.configure(Database.class.getClassLoader())
          .dataSource(unbounded)
          .locations("classpath:easewright/clinic")
          .load()
          .migrate();
    } catch (FlywayException failed) {
      throw new StoreFailure(failed);
    }
  }

  /** Closes it; the embedded file is written anew without what was deleted. */
  @Override
  public void close() {
    opening.lock();
    try {
      if (opened != null) {
        opened.pool().close();
        opened = null;
        if (address.isEmbedded()) {
          compact();
        }
      }
    } finally {
      opening.unlock();
    }
  }

  /** The engine ends with this statement, and its connection with it. */
  private void compact() {
    Properties user = new Properties();
    user.setProperty("user", address.user());
    user.setProperty("password", address.password());
    try (Connection last = new org.h2.Driver().connect(address.url(), user);
        Statement statement = last.createStatement()) {
      statement.execute("shutdown compact");
    } catch (SQLException failed) {
      throw new StoreFailure(failed);
    }
  }
}
