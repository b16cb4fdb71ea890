package easewright.clinic;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where clinics are stored: a folder of this machine, or a PostgreSQL that several machines share.
 *
 * @param url a JDBC address
 * @param file the file an embedded store is kept in; null for a server
 */
public record StoreAddress(String url, String user, String password, Path file) {

  /**
   * The embedded store. Every commit is written before it is acknowledged, whatever is killed next;
   * nothing is written to a trace file, for it would repeat values.
   */
  public static StoreAddress inFolder(Path folder) {
    Path base = folder.toAbsolutePath().normalize().resolve("clinics");
    if (base.toString().contains(";")) {
      throw new IllegalArgumentException("The folder of the store can't have a ; in its name.");
    }
    return new StoreAddress(
        "jdbc:h2:file:"
            + base
            + ";WRITE_DELAY=0;DB_CLOSE_DELAY=-1;DB_CLOSE_ON_EXIT=FALSE"
            + ";TRACE_LEVEL_FILE=0;TRACE_LEVEL_SYSTEM_OUT=0",
        "easewright",
        "",
        Path.of(base + ".mv.db"));
  }

  /** A PostgreSQL, as {@code jdbc:postgresql://host:5432/easewright}. */
  public static StoreAddress onServer(String url, String user, String password) {
    if (!url.startsWith("jdbc:postgresql:")) {
      throw new IllegalArgumentException("The store's address starts with jdbc:postgresql:.");
    }
    return new StoreAddress(url, user, password, null);
  }

  boolean isEmbedded() {
    return file != null;
  }

  /** Whether there can be anything in it without opening it. */
  boolean mayHoldClinics() {
    return file == null || Files.exists(file);
  }

  /** Without the password. */
  @Override
  public String toString() {
    return isEmbedded() ? "store in " + file.getParent() : "store at " + url;
  }
}
