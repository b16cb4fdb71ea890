package easewright.clinic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.deadline.DeadlinePassed;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The store with the embedded file engine. */
@Tag("long")
class StoreInFolderTest extends StoreTest {
  @TempDir Path folder;

  @Override
  StoreAddress empty() {
    return StoreAddress.inFolder(folder.resolve("store"));
  }

  @Override
  String tooLong() {
    return "SQLITE_CONSTRAINT_CHECK";
  }

  @Test
  void before_a_clinic_is_opened_nothing_is_created() {
    store.keys().holder("ewo-aaaaaaaaaaaaaaaa-" + "a".repeat(40));
    store.retention().expireAll();
    assertFalse(Files.exists(folder.resolve("store")));
  }

  @Test
  @Timeout(60)
  void whoever_does_not_come_to_turn_gives_up_until_the_other_is_done() throws Exception {
    CountDownLatch held = new CountDownLatch(1);
    CountDownLatch done = new CountDownLatch(1);
    try (Database hasty = new Database(address, Duration.ofSeconds(1))) {
      Thread holder = new Thread(() -> hasty.transaction(handle -> stay(held, done)));
      holder.start();
      held.await();

      assertThrows(DeadlinePassed.class, () -> hasty.transaction(handle -> "mine"));

      done.countDown();
      holder.join();
      assertEquals("mine", hasty.transaction(handle -> "mine"));
    }
  }

  @Test
  void the_store_is_one_file_with_its_lock_and_only_its_owner_may_look_into_the_folder()
      throws IOException {
    opened();
    assertEquals(List.of("clinics.db", "clinics.lock"), files());
    assertEquals(
        "rwx------",
        java.nio.file.attribute.PosixFilePermissions.toString(
            Files.getPosixFilePermissions(folder.resolve("store"))));
  }

  @Test
  void after_deletion_the_file_holds_no_trace_of_a_case() throws IOException {
    Caller organiser = opened();
    Case kept = store.cases().open(organiser, "Marrowby");
    Case gone = store.cases().open(organiser, "Thistlewick");
    store.rounds().add(organiser, gone.id(), fitted("zq731 mm"));
    assertTrue(raw().contains("Thistlewick") && raw().contains("zq731 mm"));

    store.cases().delete(organiser, gone.id());

    assertFalse(raw().contains("Thistlewick"));
    assertFalse(raw().contains("zq731 mm"));
    assertTrue(raw().contains("Marrowby"));
    assertEquals("Marrowby", store.cases().story(organiser, kept.id()).current().nickname());
  }

  private String raw() throws IOException {
    return Files.readString(
        folder.resolve("store").resolve("clinics.db"), StandardCharsets.ISO_8859_1);
  }

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("store"))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
