package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A folder of pattern sheets, as an operator fills and edits it while the service runs. */
class PatternFolderTest {
  private static final int PATIENCE_MS = 20_000;
  private static final List<String> SHIPPED =
      new PatternSheets().shipped().stream().map(PatternSheet::id).toList();

  @TempDir Path folder;

  private final PatternSheets sheets = new PatternSheets();
  private PatternFolder watched;

  @AfterEach
  void stop() {
    if (watched != null) {
      watched.stop();
    }
  }

  /** The contract's smallest sheet under another id and name. */
  private static String sheet(String id, String name) {
    try {
      return Files.readString(Path.of("openapi/examples/small-sheet.yaml"))
          .replaceFirst("id: wickenfell-top", "id: " + id)
          .replaceFirst("name: Wickenfell top", "name: " + name);
    } catch (IOException unreadable) {
      throw new IllegalStateException(unreadable);
    }
  }

  private static String broken(String id) {
    return sheet(id, "Broken").replace("supportClass: low", "supportClass: lofty");
  }

  private void write(String file, String text) throws IOException {
    Files.writeString(folder.resolve(file), text);
  }

  private void read(boolean shippedToo) {
    watched = new PatternFolder(folder, shippedToo, sheets);
    watched.watch();
  }

  private List<String> offered() {
    return sheets.offered().stream().map(PatternSheet::id).toList();
  }

  private String nameOf(String id) {
    return sheets.find(id).orElseThrow().name();
  }

  private void until(BooleanSupplier so) throws InterruptedException {
    for (int waited = 0; !so.getAsBoolean(); waited += 50) {
      assertTrue(waited < PATIENCE_MS, () -> offered() + " " + watched.faults());
      Thread.sleep(50);
    }
  }

  private static List<String> with(List<String> own) {
    return Stream.concat(own.stream(), SHIPPED.stream()).toList();
  }

  @Test
  void own_sheets_come_before_the_shipped_ones_in_the_order_of_their_files() throws IOException {
    write("b.yaml", sheet("brindle-top", "Brindle"));
    write("a.yml", sheet("averley-top", "Averley"));
    write("notes.txt", "Not a sheet.");
    write(".b.yaml", "Nor this, which an editor keeps.");
    read(true);
    assertEquals(with(List.of("averley-top", "brindle-top")), offered());
    assertEquals(List.of(), watched.faults());
  }

  @Test
  void in_place_of_the_shipped_ones_they_are_offered_alone_and_the_others_still_known()
      throws IOException {
    write("a.yaml", sheet("averley-top", "Averley"));
    read(false);
    assertEquals(List.of("averley-top"), offered());
    assertEquals(with(List.of("averley-top")).size(), sheets.known().size());
    String hidden = SHIPPED.get(0);
    assertTrue(sheets.find(hidden).isPresent());
    assertEquals(
        List.of("averley-top", hidden),
        sheets.offeredWith(hidden).stream().map(PatternSheet::id).toList());
    assertEquals(offered().size(), sheets.offeredWith("averley-top").size());
    assertEquals(offered().size(), sheets.offeredWith("no-such-sheet").size());
  }

  @Test
  void a_sheet_in_json_is_read_too() throws IOException {
    write(
        "a.json",
        sheets
            .listed(SHIPPED.get(0))
            .orElseThrow()
            .json()
            .replaceFirst("\"id\":\"" + SHIPPED.get(0), "\"id\":\"averley-top"));
    read(true);
    assertEquals(with(List.of("averley-top")), offered());
  }

  @Test
  void an_edited_sheet_is_offered_anew_and_an_added_one_too() throws Exception {
    write("a.yaml", sheet("averley-top", "Averley"));
    read(true);
    write("a.yaml", sheet("averley-top", "Averley, second edition"));
    until(() -> nameOf("averley-top").equals("Averley, second edition"));
    write("b.yaml", sheet("brindle-top", "Brindle"));
    until(() -> offered().equals(with(List.of("averley-top", "brindle-top"))));
  }

  @Test
  void a_sheet_broken_at_the_start_is_left_out_with_line_and_remedy_until_it_is_mended()
      throws Exception {
    write("a.yaml", broken("averley-top"));
    write("b.yaml", sheet("brindle-top", "Brindle"));
    read(true);
    assertEquals(with(List.of("brindle-top")), offered());
    String fault = watched.faults().get(0);
    long line = broken("x").lines().takeWhile(one -> !one.startsWith("supportClass")).count() + 1;
    assertTrue(fault.startsWith("The pattern sheet a.yaml is left out. Line " + line), fault);
    assertTrue(
        fault.contains("/supportClass: ") && fault.contains("\"low\", \"medium\" or"), fault);
    write("a.yaml", sheet("averley-top", "Averley"));
    until(() -> offered().contains("averley-top"));
    assertEquals(List.of(), watched.faults());
  }

  @Test
  void a_sheet_broken_while_it_is_offered_stays_as_it_was_until_it_is_mended() throws Exception {
    write("a.yaml", sheet("averley-top", "Averley"));
    read(true);
    write("a.yaml", broken("averley-top"));
    until(() -> !watched.faults().isEmpty());
    assertTrue(watched.faults().get(0).startsWith("The pattern sheet a.yaml stays as it was."));
    assertEquals("Averley", nameOf("averley-top"));
    write("b.yaml", sheet("brindle-top", "Brindle")); // read once more, and still as it was
    until(() -> offered().contains("brindle-top"));
    assertEquals("Averley", nameOf("averley-top"));
    write("a.yaml", sheet("averley-top", "Mended"));
    until(() -> nameOf("averley-top").equals("Mended") && watched.faults().isEmpty());
  }

  @Test
  void a_removed_sheet_is_known_no_more() throws Exception {
    write("a.yaml", sheet("averley-top", "Averley"));
    write("b.yaml", sheet("brindle-top", "Brindle"));
    read(true);
    Files.delete(folder.resolve("a.yaml"));
    until(() -> offered().equals(with(List.of("brindle-top"))));
    assertTrue(sheets.find("averley-top").isEmpty());
  }

  /** Stored fittings, examples and the cases of rules mean the shipped sheet by this id. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void the_id_of_a_shipped_sheet_is_taken(boolean shippedToo) throws IOException {
    String taken = SHIPPED.get(0);
    write("a.yaml", sheet(taken, "Mine"));
    write("b.yaml", sheet("brindle-top", "Brindle"));
    read(shippedToo);
    assertEquals(shippedToo ? with(List.of("brindle-top")) : List.of("brindle-top"), offered());
    assertEquals(
        List.of(
            "The pattern sheet a.yaml is left out. Its id \""
                + taken
                + "\" is that of a shipped sheet too. Give each sheet an id of its own."),
        watched.faults());
  }

  @Test
  void of_two_sheets_with_the_same_id_the_first_file_counts() throws Exception {
    write("a.yaml", sheet("averley-top", "First"));
    write("b.yaml", sheet("averley-top", "Second"));
    read(true);
    assertEquals("First", nameOf("averley-top"));
    assertTrue(watched.faults().get(0).contains("b.yaml is left out"), watched.faults()::toString);
    assertTrue(watched.faults().get(0).contains("that of a.yaml"), watched.faults()::toString);
    Files.delete(folder.resolve("a.yaml"));
    until(() -> nameOf("averley-top").equals("Second"));
  }

  @Test
  void sheets_are_bounded_in_number_and_size() throws IOException {
    for (int i = 0; i <= PatternFolder.MOST_SHEETS; i++) {
      write("sheet-%03d.yaml".formatted(i), "id: none");
    }
    write("a-large-one.yaml", "#".repeat(256 * 1024) + "\n" + sheet("averley-top", "Averley"));
    write("an-empty-one.yaml", "");
    read(true);
    assertEquals(SHIPPED, offered());
    List<String> faults = watched.faults();
    assertEquals(PatternFolder.MOST_SHEETS + 3, faults.size());
    assertTrue(faults.get(0).contains("more than 256 KB"), faults.get(0));
    assertTrue(faults.get(1).contains("empty"), faults.get(1));
    assertTrue(faults.get(PatternFolder.MOST_SHEETS - 1).contains("Line 1"), faults::toString);
    for (String beyond : faults.subList(PatternFolder.MOST_SHEETS, faults.size())) {
      assertTrue(beyond.contains("more than 100 sheets"), beyond);
    }
  }

  @Test
  void a_folder_that_is_not_there_stops_the_start_and_says_why() {
    IllegalStateException none =
        assertThrows(
            IllegalStateException.class,
            () -> new PatternFolder(folder.resolve("none"), true, sheets));
    assertTrue(none.getMessage().contains("names no folder"), none.getMessage());
  }

  @Test
  void a_folder_that_goes_away_takes_no_sheet_with_it() throws Exception {
    Path mounted = Files.createDirectory(folder.resolve("mounted"));
    Files.writeString(mounted.resolve("a.yaml"), sheet("averley-top", "Averley"));
    watched = new PatternFolder(mounted, true, sheets);
    watched.watch();
    Files.move(mounted, folder.resolve("elsewhere"));
    Thread.sleep(1500); // two looks at the folder
    assertEquals(with(List.of("averley-top")), offered());
    Files.move(folder.resolve("elsewhere"), mounted);
    Files.writeString(mounted.resolve("a.yaml"), sheet("averley-top", "Back again"));
    until(() -> nameOf("averley-top").equals("Back again"));
  }
}
