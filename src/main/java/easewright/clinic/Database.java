package easewright.clinic;

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
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The engine behind the store. It is opened, and its tables made or brought up to date, when it is
 * first used: a service without clinics pays nothing for it and leaves no file behind.
 */
public final class Database implements AutoCloseable {
  private static final int MOST_CONNECTIONS = 8;
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private final StoreAddress address;

  /**
   * The embedded engine does one transaction at a time. It writes to its file whenever one commits,
   * what others have begun along with it; killed then, it now and then left rows of those behind.
   */
  private final ReentrantLock turn = new ReentrantLock(true);

  private volatile Opened opened;

  public Database(StoreAddress address) {
    this.address = address;
  }

  private record Opened(AgroalDataSource pool, Jdbi jdbi) {}

  /** Whether there can be any clinic; asking creates nothing. */
  boolean mayHoldClinics() {
    return opened != null || address.mayHoldClinics();
  }

  /**
   * Does some work wholly or not at all. When it returns, what was written outlives the process.
   *
   * @throws StoreFailure if the engine fails; exceptions of the work itself come as they are
   */
  <T> T transaction(Function<Handle, T> work) {
    if (!address.isEmbedded()) {
      return inTransaction(work);
    }
    turn.lock();
    try {
      return inTransaction(work);
    } finally {
      turn.unlock();
    }
  }

  private <T> T inTransaction(Function<Handle, T> work) {
    try {
      return open().jdbi().inTransaction(work::apply);
    } catch (JdbiException failed) {
      throw new StoreFailure(failed);
    }
  }

  private Opened open() {
    Opened ready = opened;
    return ready != null ? ready : openOnce();
  }

  private synchronized Opened openOnce() {
    if (opened == null) {
      AgroalDataSource pool = pool();
      try {
        migrate(pool);
      } catch (FlywayException failed) {
        pool.close();
        throw new StoreFailure(failed);
      }
      opened = new Opened(pool, Jdbi.create(pool));
    }
    return opened;
  }

  private AgroalDataSource pool() {
    try {
      if (address.isEmbedded()) {
        makeFolder(address.file().getParent());
      }
      return AgroalDataSource.from(
          new AgroalDataSourceConfigurationSupplier()
              .connectionPoolConfiguration(
                  pool ->
                      pool.maxSize(MOST_CONNECTIONS)
                          .acquisitionTimeout(PATIENCE)
                          .validateOnBorrow(true) // a server may have restarted
                          .connectionFactoryConfiguration(
                              connection ->
                                  connection
                                      .connectionProviderClass(driver())
                                      .jdbcUrl(address.url())
                                      .principal(new NamePrincipal(address.user()))
                                      .credential(new SimplePassword(address.password())))));
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

  private static void migrate(AgroalDataSource pool) {
    Flyway.configure(Database.class.getClassLoader())
        .dataSource(pool)
        .locations("classpath:easewright/clinic")
        .load()
        .migrate();
  }

  /** Closes it; the embedded file is written anew without what was deleted. */
  @Override
  public synchronized void close() {
    if (opened == null) {
      return;
    }
    opened.pool().close();
    opened = null;
    if (address.isEmbedded()) {
      compact();
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
