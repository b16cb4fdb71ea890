package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The store's file, damaged in every way we could think of, and written by other versions. */
@Tag("long")
class StoreFileTest {
  private static final int PAGE = 4096;
  private static final int FLIPS = 400;
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  @TempDir Path folder;
  private final SettableClock clock = new SettableClock();
  private StoreAddress address;
  private byte[] whole;
  private String key;
  private Clinics.Export all;

  @BeforeEach
  void stock() throws IOException {
    address = StoreAddress.inFolder(folder);
    try (ClinicStore store = store()) {
      key = store.clinics().open("Evening class", "Odile", 30).key().text();
      Caller organiser = store.keys().holder(key).orElseThrow();
      for (int i = 0; i < 6; i++) {
        Case open = store.cases().open(organiser, "Wearer " + i);
        for (int no = 0; no < 3; no++) {
          store.rounds().add(organiser, open.id(), fitted(i + " and " + no));
        }
        store.cases().note(organiser, open.id(), "Ask for a picture of " + i);
      }
      all = store.clinics().export(organiser);
    }
    whole = Files.readAllBytes(address.file());
  }

  private static Fitted fitted(String mark) {
    var json = JsonNodeFactory.instance.objectNode().put("bust", "94 cm").put("mark", mark);
    return new Fitted(
        "It rides up, " + mark,
        json,
        json.deepCopy().put("long", "ä".repeat(4000)),
        new Case.Gist(false, "band-too-long", "band-rides-up-at-the-back", null, "M"));
  }

  private ClinicStore store() {
    return new ClinicStore(address, clock, PATIENCE);
  }

  /** The contents read from the file after a change; null if it was rejected. */
  private List<Story> read(UnaryOperator<byte[]> change) throws IOException {
    byte[] changed = change.apply(whole.clone());
    Files.write(address.file(), changed);
    try (ClinicStore store = store()) {
      Caller organiser = store.keys().holder(key).orElse(null);
      if (organiser == null) {
        return List.of();
      }
      return store.clinics().export(organiser).cases();
    } catch (StoreAway told) {
      assertTrue(told.condition().fault().contains(address.file().toString()));
      assertArrayEquals(changed, Files.readAllBytes(address.file()), "left as it was found");
      return null;
    }
  }

  @Test
  void wherever_the_file_is_cut_it_is_refused() throws IOException {
    List<Integer> taken = new ArrayList<>();
    for (int page = 0; page * PAGE < whole.length; page++) {
      for (int length : new int[] {page * PAGE, page * PAGE + 1, page * PAGE + PAGE / 2}) {
        if (read(bytes -> Arrays.copyOf(bytes, length)) != null) {
          taken.add(length);
        }
      }
    }
    assertEquals(List.of(), taken);
    assertEquals(all.cases(), read(bytes -> bytes));
  }

  /** A file that is not rejected reads as written: the bit was in an unused part of a page. */
  @Test
  void no_flipped_bit_changes_what_is_read() throws IOException {
    Random random = new Random(20261128);
    int refused = 0;
    for (int i = 0; i < FLIPS; i++) {
      int at = random.nextInt(whole.length);
      int bit = 1 << random.nextInt(8);
      List<Story> read =
          read(
              bytes -> {
                bytes[at] ^= (byte) bit;
                return bytes;
              });
      refused += read == null ? 1 : 0;
      assertTrue(read == null || read.equals(all.cases()), "bit " + bit + " of byte " + at);
    }
    assertTrue(refused > FLIPS / 2, refused + " of " + FLIPS);
  }

  @Test
  void a_page_of_zeros_or_of_another_page_changes_nothing_that_is_read() throws IOException {
    for (int page = 0; page * PAGE < whole.length; page++) {
      int at = page * PAGE;
      for (int from : new int[] {-1, whole.length - PAGE, 3 * PAGE}) {
        List<Story> read =
            read(
                bytes -> {
                  if (from < 0) {
                    Arrays.fill(bytes, at, at + PAGE, (byte) 0);
                  } else {
                    System.arraycopy(whole, from, bytes, at, PAGE);
                  }
                  return bytes;
                });
        assertTrue(read == null || read.equals(all.cases()), "page " + page + " from " + from);
      }
    }
  }

  @Test
  void a_file_without_clinics_is_no_new_store() throws IOException, SQLException {
    Files.delete(address.file());
    try (Connection other = plain();
        Statement statement = other.createStatement()) {
      statement.execute("create table recipes (name varchar)");
    }
    try (ClinicStore store = store()) {
      assertThrows(StoreAway.class, () -> store.keys().holder(key));
      assertFalse(store.condition().inOrder());
    }
  }

  @Test
  void a_missing_file_is_not_replaced_by_an_empty_store() throws IOException {
    Files.delete(address.file());
    try (ClinicStore store = store()) {
      assertThrows(StoreAway.class, () -> store.keys().holder(key));
      assertThrows(StoreAway.class, () -> store.clinics().open("Other class", "Isaura", 30));
      assertFalse(Files.exists(address.file()));
    }
  }

  @Test
  void a_start_that_was_killed_while_it_made_the_file_is_made_good() throws IOException {
    Files.delete(address.file());
    Files.write(folder.resolve("clinics.lock"), new byte[0]);
    Files.write(folder.resolve("clinics.new"), Arrays.copyOf(whole, PAGE + 100));
    try (ClinicStore store = store()) {
      assertTrue(store.keys().holder(key).isEmpty());
      store.clinics().open("Other class", "Isaura", 30);
      assertTrue(store.condition().inOrder());
    }
  }

  @Test
  void a_file_of_an_older_migration_is_brought_up_to_date() throws IOException, SQLException {
    Files.delete(address.file());
    Flyway.configure(StoreFileTest.class.getClassLoader())
        .dataSource(FileSource.ofNew(address.file(), PATIENCE))
        .locations("classpath:easewright/clinic")
        .placeholders(Map.of("numbered", "integer"))
        .target("1")
        .load()
        .migrate();
    try (Connection old = plain();
        Statement statement = old.createStatement()) {
      statement.execute("insert into clinics values ('aaaa', 'Old class', 30, 1, 1)");
    }
    try (Database database = new Database(address, PATIENCE)) {
      assertEquals(
          "Old class",
          database.transaction(
              handle ->
                  handle
                      .createQuery("select name from clinics where not sample")
                      .mapTo(String.class)
                      .one()));
      assertTrue(database.check().inOrder());
    }
  }

  @Test
  void a_file_of_a_newer_version_is_refused() throws SQLException {
    try (Connection newer = plain();
        Statement statement = newer.createStatement()) {
      statement.execute(
          "insert into flyway_schema_history select 99, '99', 'later', type, 'V99__later.sql', 1,"
              + " installed_by, installed_on, 1, 1 from flyway_schema_history where version = '1'");
    }
    try (ClinicStore store = store()) {
      StoreAway told = assertThrows(StoreAway.class, () -> store.keys().holder(key));
      assertTrue(told.condition().fault().contains("another version"), told.getMessage());
    }
  }

  /** A column omitted from its row's sum could change unnoticed. */
  @Test
  void the_sum_of_each_row_is_over_all_its_columns() throws SQLException {
    try (Connection plain = plain()) {
      for (String table :
          texts(plain, "select name from sqlite_schema where type = 'table'", 1).stream()
              .filter(name -> !name.startsWith("sqlite_") && !name.startsWith("flyway_"))
              .toList()) {
        String sum =
            texts(plain, "select sql from sqlite_schema where name = '" + table + "_sum'", 1)
                .stream()
                .findFirst()
                .orElse("");
        Set<String> summed =
            new HashSet<>(Arrays.asList(sum.replaceAll("(?s).*row_sum\\(|\\)|\\s", "").split(",")));
        assertEquals(
            new HashSet<>(texts(plain, "pragma table_info(" + table + ")", 2)), summed, table);
      }
    }
  }

  private Connection plain() throws SQLException {
    return DriverManager.getConnection(address.url());
  }

  private static List<String> texts(Connection plain, String query, int column)
      throws SQLException {
    try (Statement statement = plain.createStatement();
        ResultSet rows = statement.executeQuery(query)) {
      List<String> texts = new ArrayList<>();
      while (rows.next()) {
        texts.add(rows.getString(column));
      }
      return texts;
    }
  }
}
