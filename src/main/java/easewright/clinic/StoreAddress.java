package easewright.clinic;

import java.nio.file.Path;

/**
 * Where clinics are stored: a folder of this machine, or a PostgreSQL server shared by several
 * machines.
 *
 * @param url a JDBC URL
 * @param file the file of an embedded store; null for a server
 */
public record StoreAddress(String url, String user, String password, Path file) {

  /** The embedded store, in a file in this folder. */
  public static StoreAddress inFolder(Path folder) {
    Path file = folder.toAbsolutePath().normalize().resolve("clinics.db");
    if (file.toString().contains("?")) {
      throw new IllegalArgumentException("The folder of the store can't have a ? in its name.");
    }
    return new StoreAddress("jdbc:sqlite:" + file, "", "", file);
  }

  /** A PostgreSQL server, such as {@code jdbc:postgresql://host:5432/easewright}. */
  public static StoreAddress onServer(String url, String user, String password) {
    if (!url.startsWith("jdbc:postgresql:")) {
      throw new IllegalArgumentException("The store's address starts with jdbc:postgresql:.");
    }
    return new StoreAddress(url, user, password, null);
  }

  boolean isEmbedded() {
    return file != null;
  }

  /** The file or the server, without the rest of the URL, which can contain a password. */
  @Override
  public String toString() {
    return isEmbedded() ? file.toString() : url.replaceFirst("\\?.*", "");
  }
}
