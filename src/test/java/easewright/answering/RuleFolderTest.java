package easewright.answering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.pattern.PatternSheets;
import easewright.rulebook.BookCopy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("long")
class RuleFolderTest {
  private static final int PATIENCE = 90;
  private static final String SIGNS = "catalog/signs/band.yaml";
  private static final String SAYINGS = "everyday/sayings/band.yaml";

  @TempDir Path folder;

  private final LinkedBlockingQueue<Edition> read = new LinkedBlockingQueue<>();
  private BookCopy book;
  private RuleFolder watched;

  @BeforeEach
  void watch() {
    book = BookCopy.in(folder);
    watched = new RuleFolder(Optional.of(folder), new PatternSheets(), read::add);
    watched.watch();
  }

  @AfterEach
  void stop() {
    watched.stop();
  }

  private Edition next() throws InterruptedException {
    Edition edition = read.poll(PATIENCE, TimeUnit.SECONDS);
    assertTrue(edition != null, () -> "Nothing was read: " + watched.state());
    return edition;
  }

  private void settled(boolean broken) throws InterruptedException {
    for (int polls = 0; polls < PATIENCE * 10; polls++) {
      RuleFolder.State state = watched.state();
      if (!state.reading() && state.problems().isEmpty() != broken) {
        return;
      }
      Thread.sleep(100);
    }
    throw new AssertionError("It did not settle: " + watched.state());
  }

  @Test
  void a_faulty_book_is_never_activated_but_reported_until_it_is_fixed()
      throws InterruptedException {
    String before = book.text(SIGNS);
    int line = book.put(SIGNS, "effort: glance", "effort: glanze");
    settled(true);
    assertEquals(null, read.poll());
    assertEquals(SIGNS, watched.state().problems().get(0).file());
    assertEquals(line, watched.state().problems().get(0).line());
    book.write(SIGNS, before);
    next();
    settled(false);
  }

  @Test
  void a_deleted_file_and_an_older_copy_are_changes_too() throws Exception {
    String sayings = book.text(SAYINGS);
    assertFalse(sayings.isEmpty());
    book.delete(SAYINGS);
    assertFalse(next().book().source().everyday().so().containsKey("band-rides-up-at-the-back"));
    book.write(SAYINGS, sayings);
    older(SAYINGS);
    assertTrue(next().book().source().everyday().so().containsKey("band-rides-up-at-the-back"));
  }

  /** Like a copy that keeps its time stamp: older than every other file. */
  private void older(String file) throws IOException {
    Files.setLastModifiedTime(folder.resolve(file), FileTime.fromMillis(1_000_000));
  }
}
