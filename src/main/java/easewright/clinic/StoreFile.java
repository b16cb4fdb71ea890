package easewright.clinic;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.SqlStatements;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * The store in one file (SQLite). Every transaction opens the file, so that a truncated, replaced
 * or missing file is noticed at once, and writes and syncs it before acknowledging: acknowledged
 * data is never only in a second file that could get lost. The whole file is checked when first
 * opened, and again after a fault.
 */
final class StoreFile implements Engine {
  private static final String[] TABLES = {
    "classpath:easewright/clinic", "classpath:easewright/clinic-file"
  };

  private static final String SCHEMA_SUM =
      "select (row_sum(group_concat(type || name || coalesce(sql, ''))) & 2147483647) | 1"
          + " from (select type, name, sql from sqlite_schema order by type, name)";

  private final Path file;
  private final Duration patience;
  private final FileHold hold;

  StoreFile(StoreAddress address, Duration patience) {
    file = address.file();
    this.patience = patience;
    hold = new FileHold(file.resolveSibling("clinics.lock"));
  }

  /** The file of an earlier version's engine. */
  private Path earlier() {
    return file.resolveSibling("clinics.mv.db");
  }

  @Override
  public boolean mayHoldClinics() {
    return Files.exists(file) || Files.exists(earlier()) || hold.isMarked();
  }

  @Override
  public Jdbi open() throws IOException, SQLException {
    makeFolder(file.getParent());
    unpackInto(file.getParent());
    if (!hold.take()) {
      throw new StoreAway(FileFault.HELD.at(file));
    }
    if (!Files.exists(file)) {
      if (hold.isMarked()) {
        throw new StoreAway(FileFault.GONE.at(file));
      }
      if (Files.exists(earlier())) {
        throw new StoreAway(FileFault.EARLIER.at(earlier()));
      }
      make();
    }
    check();
    hold.mark();
    FileSource source = FileSource.of(file, patience);
    migrate(source);
    Jdbi jdbi = Jdbi.create(source);
    jdbi.getConfig(SqlStatements.class).setQueryTimeout((int) patience.toSeconds());
    return jdbi.define("lock", ""); // a writer is alone anyway
  }

  /** The table definitions have a checksum too, which is absent while they are being changed. */
  private static void migrate(FileSource source) throws SQLException {
    Flyway tables = Engine.tables(source, Map.of("numbered", "integer", "bytes", "blob"), TABLES);
    boolean change = tables.info().pending().length > 0;
    if (change) {
      source.mark(0);
    }
    tables.migrate();
    if (change) {
      source.mark(number(source, SCHEMA_SUM));
    }
  }

  private static int number(FileSource source, String query) throws SQLException {
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement()) {
      return Integer.parseInt(first(statement, query));
    }
  }

  /**
   * Creates it under another name first, so a file of the final name is never empty or incomplete.
   */
  private void make() throws IOException, SQLException {
    Path begun = file.resolveSibling("clinics.new");
    Files.deleteIfExists(begun);
    Files.deleteIfExists(file.resolveSibling("clinics.new-journal"));
    migrate(FileSource.ofNew(begun, patience));
    Files.move(begun, file, StandardCopyOption.ATOMIC_MOVE);
    try (FileChannel folder = FileChannel.open(file.getParent(), StandardOpenOption.READ)) {
      folder.force(true);
    }
  }

  /** Reads every row, which takes about a second per hundred megabytes. */
  private void check() throws IOException, SQLException {
    if (Files.size(file) == 0) {
      throw new StoreAway(FileFault.EMPTY.at(file));
    }
    try (Connection connection = FileSource.of(file, patience).getConnection();
        Statement statement = connection.createStatement()) {
      boolean whole =
          "ok".equals(first(statement, "pragma integrity_check(1)"))
              && first(statement, "pragma foreign_key_check") == null
              && List.of("0", first(statement, SCHEMA_SUM))
                  .contains(first(statement, "pragma user_version"));
      if (!whole) {
        throw new StoreAway(FileFault.DAMAGED.at(file));
      }
      if (first(statement, "select name from sqlite_schema where name = 'clinics'") == null) {
        throw new StoreAway(FileFault.FOREIGN.at(file));
      }
    } catch (SQLException failed) {
      if (isWaitedFor(failed) || kind(failed).isPresent()) {
        throw failed;
      }
      throw new StoreAway(FileFault.DAMAGED.at(file)); // these statements are known to be correct
    }
  }

  private static String first(Statement statement, String query) throws SQLException {
    try (ResultSet rows = statement.executeQuery(query)) {
      return rows.next() ? rows.getString(1) : null;
    }
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

  /** The driver unpacks its native library; this folder is writable even if others are not. */
  private static void unpackInto(Path folder) {
    String ours = "org.sqlite.tmpdir";
    if (System.getProperty(ours) == null
        && !Files.isWritable(Path.of(System.getProperty("java.io.tmpdir")))) {
      System.setProperty(ours, folder.toString());
    }
  }

  @Override
  public Optional<StoreCondition> fault(Throwable failed) {
    return kind(failed).map(kind -> kind.at(file));
  }

  private static Optional<FileFault> kind(Throwable failed) {
    Optional<SQLiteException> error = Engine.cause(failed, SQLiteException.class);
    Optional<FileFault> ofTheFile = error.flatMap(one -> FileFault.of(one.getResultCode()));
    if (ofTheFile.isPresent()) {
      return ofTheFile;
    }
    if (Engine.cause(failed, FlywayValidateException.class).isPresent()) {
      return Optional.of(FileFault.OTHER_VERSION);
    }
    if (Engine.cause(failed, FlywayException.class).isPresent()) {
      return Optional.of(FileFault.DAMAGED);
    }
    if (error.isPresent()) {
      return Optional.empty();
    }
    if (Engine.cause(failed, LinkageError.class).isPresent()
        || Engine.cause(failed, org.sqlite.NativeLibraryNotFoundException.class).isPresent()) {
      return Optional.of(FileFault.NO_ENGINE);
    }
    boolean unopened =
        Engine.cause(failed, IOException.class).isPresent()
            || Engine.cause(failed, SQLException.class).isPresent();
    return unopened ? Optional.of(FileFault.CANT_OPEN) : Optional.empty();
  }

  /** Another program, such as a backup, may lock the file for a while. */
  @Override
  public boolean isWaitedFor(Throwable failed) {
    return Engine.cause(failed, SQLiteException.class)
        .map(error -> error.getResultCode().code & 0xff)
        .filter(
            code ->
                code == SQLiteErrorCode.SQLITE_BUSY.code
                    || code == SQLiteErrorCode.SQLITE_LOCKED.code)
        .isPresent();
  }

  @Override
  public boolean failed(Throwable failed) {
    return true;
  }

  /** Releases the file; nothing is left to write. */
  @Override
  public void close() {
    hold.release();
  }
}
