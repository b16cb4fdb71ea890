package easewright.clinic;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.Pragma;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteOpenMode;

/** Connections to the store's file, each of which reopens it. */
final class FileSource extends SQLiteDataSource {
  private final Path file;
  private final Duration patience;

  private FileSource(Path file, Duration patience, SQLiteConfig config) {
    super(config);
    this.file = file;
    this.patience = patience;
    setUrl("jdbc:sqlite:" + file);
  }

  /** For an existing file. */
  static FileSource of(Path file, Duration patience) {
    SQLiteConfig config = config(patience);
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    return new FileSource(file, patience, config);
  }

  /** For a file that may not exist. */
  static FileSource ofNew(Path file, Duration patience) {
    return new FileSource(file, patience, config(patience));
  }

  /** Writes a number into the file header; 0 means none. */
  void mark(int number) throws SQLException {
    SQLiteConfig config = config(patience);
    config.setUserVersion(number);
    new FileSource(file, patience, config).getConnection().close();
  }

  private static SQLiteConfig config(Duration patience) {
    SQLiteConfig config = new SQLiteConfig();
    // A commit deletes the journal after syncing the file and the folder, so acknowledged data is
    // in the file itself. A write-ahead log could get lost unnoticed.
    config.setJournalMode(JournalMode.DELETE);
    config.setPragma(Pragma.SYNCHRONOUS, "EXTRA");
    config.setTransactionMode(TransactionMode.IMMEDIATE);
    config.enforceForeignKeys(true);
    config.setBusyTimeout((int) patience.toMillis());
    // Deleted data is overwritten, and no row goes into temporary files.
    config.setPragma(Pragma.SECURE_DELETE, "true");
    config.setPragma(Pragma.TEMP_STORE, "MEMORY");
    return config;
  }

  @Override
  public SQLiteConnection getConnection(String user, String password) throws SQLException {
    SQLiteConnection connection = super.getConnection(user, password);
    try {
      RowSum.to(connection);
      return connection;
    } catch (SQLException failed) {
      connection.close();
      throw failed;
    }
  }
}
