package easewright.clinic;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A private PostgreSQL server, from binaries that come as a dependency. It runs as an ordinary user
 * even if the tests run as root, in a user namespace; it stops with the tests.
 */
public final class RealPostgres {
  private static final EmbeddedPostgres SERVER = start();
  private static final AtomicInteger DATABASES = new AtomicInteger();

  private RealPostgres() {}

  private static EmbeddedPostgres start() {
    try {
      return EmbeddedPostgres.builder().setLocaleConfig("locale", "C").start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The address of a new, empty database. */
  public static StoreAddress emptyDatabase() {
    String name = "clinic" + DATABASES.incrementAndGet();
    try (var connection = SERVER.getPostgresDatabase().getConnection();
        var statement = connection.createStatement()) {
      statement.execute("create database " + name);
    } catch (java.sql.SQLException e) {
      throw new IllegalStateException(e);
    }
    return StoreAddress.onServer(
        "jdbc:postgresql://localhost:" + SERVER.getPort() + "/" + name, "postgres", "postgres");
  }

  /** Settings that make a service use a new, empty database. */
  public static Map<String, String> settings() {
    StoreAddress database = emptyDatabase();
    return Map.of(
        "easewright.clinic.url", database.url(),
        "easewright.clinic.user", database.user(),
        "easewright.clinic.password", database.password());
  }
}
