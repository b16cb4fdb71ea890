package easewright.clinic;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** A PostgreSQL server that can be stopped and restarted with its data. */
public final class RestartedPostgres implements AutoCloseable {
  private static final int CONNECTIONS = 20;

  private final Path folder;
  private final int port;
  private EmbeddedPostgres server;

  /** Starts one on a free port, with its files in a folder. */
  public RestartedPostgres(Path folder) throws IOException {
    this.folder = folder;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    start();
  }

  public int port() {
    return port;
  }

  /** Starts it. */
  public void start() throws IOException {
    server =
        EmbeddedPostgres.builder()
            .setLocaleConfig("locale", "C")
            .setDataDirectory(folder)
            .setCleanDataDirectory(false)
            .setServerConfig("max_connections", "" + CONNECTIONS)
            .setPort(port)
            .start();
  }

  /** Stops it like {@code pg_ctl stop -m fast}: disconnects all clients. */
  public void stop() throws IOException {
    server.close();
  }

  /** Executes one statement as the superuser. */
  public void execute(String statement) throws SQLException {
    try (Connection connection = server.getPostgresDatabase().getConnection();
        var one = connection.createStatement()) {
      one.execute(statement);
    }
  }

  /** Disconnects all clients and takes every available connection, until these are closed. */
  public List<Connection> takeAllConnections() throws SQLException {
    List<Connection> taken = new ArrayList<>();
    taken.add(server.getPostgresDatabase().getConnection());
    for (int i = 0; i < 10 * CONNECTIONS; i++) {
      try (var statement = taken.get(0).createStatement()) {
        statement.execute(
            "select pg_terminate_backend(pid) from pg_stat_activity where datname = 'easewright'");
      }
      try {
        taken.add(server.getPostgresDatabase().getConnection());
      } catch (SQLException full) {
        return taken;
      }
    }
    throw new IllegalStateException("There is no end of connections.");
  }

  /** A second server with a copy of this one's data; this one must be stopped. */
  public RestartedPostgres copy(Path to) throws IOException, InterruptedException {
    Files.createDirectories(to);
    int copied =
        new ProcessBuilder("cp", "-a", folder + "/.", to.toString()).inheritIO().start().waitFor();
    if (copied != 0) {
      throw new IOException("The server's files can't be copied.");
    }
    return new RestartedPostgres(to);
  }

  @Override
  public void close() throws IOException {
    server.close();
  }
}
