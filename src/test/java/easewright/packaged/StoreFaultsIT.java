package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What can befall the file of the store: each fault is a 503 with Retry-After (RFC 9110, section
 * 15.6.4), one line of the log that names the file and the remedy, and a readiness that is down;
 * the service heals without a restart once the cause is gone; nothing acknowledged is lost.
 */
@Tag("long")
class StoreFaultsIT {
  private static final int TRIES = 5;
  private static final long HEALED_WITHIN_MS = 5000;

  @TempDir Path folder;

  private String store() {
    return "-Deasewright.clinic.store=" + folder.resolve("store");
  }

  private PackagedService begin() {
    return PackagedService.begin(store());
  }

  /** The file that holds the clinics. */
  private Path file() {
    return folder.resolve("store").resolve("clinics.db");
  }

  /** A clinic with rounds, in a service that has ended. */
  private AskedClinic stocked(boolean orderly) throws Exception {
    try (PackagedService service = begin()) {
      AskedClinic clinic = AskedClinic.open(service.address());
      for (int i = 0; i < 30; i++) {
        assertEquals(201, clinic.add().statusCode());
      }
      if (!orderly) {
        service.kill();
      }
      return clinic;
    }
  }

  private static void assertOutOfOrder(PackagedService service, AskedClinic clinic, String named)
      throws Exception {
    for (int i = 0; i < TRIES; i++) {
      for (HttpResponse<String> refused : List.of(clinic.read(), clinic.add())) {
        assertEquals(503, refused.statusCode(), refused.body() + service.log());
        assertTrue(refused.headers().firstValue("Retry-After").isPresent());
        assertTrue(refused.body().contains("/problems/store-away"), refused.body());
        assertFalse(refused.body().contains(named), "names a file: " + refused.body());
      }
      assertEquals(503, service.readiness());
    }
    assertEquals(
        200,
        clinic.sendTo("/v1/fittings", "{\"text\": \"The straps slip off.\"}").statusCode(),
        "answers go on");
    assertToldOnce(service, named);
  }

  private static void assertToldOnce(PackagedService service, String named) {
    List<String> lines = service.log().lines().filter(line -> line.contains(named)).toList();
    assertEquals(1, lines.size(), service.log());
    assertTrue(lines.get(0).contains("ERROR"), lines.get(0));
    assertEquals(0, service.log().lines().filter(line -> line.startsWith("\tat ")).count());
  }

  private static void assertHeals(PackagedService service, AskedClinic clinic) throws Exception {
    long end = System.nanoTime() + HEALED_WITHIN_MS * 1_000_000;
    while (clinic.read().statusCode() != 200 && System.nanoTime() < end) {
      Thread.sleep(100);
    }
    assertEquals(201, clinic.add().statusCode(), service.log());
    assertEquals(200, service.readiness());
    assertEquals(List.of(), clinic.lost());
    assertEquals(1, service.log().lines().filter(line -> line.contains("in order again")).count());
  }

  @Test
  void a_full_disk_refuses_until_there_is_room_again() throws Exception {
    try (SmallDisk disk = SmallDisk.at(folder.resolve("store"));
        PackagedService service = begin()) {
      disk.limit(service);
      AskedClinic clinic = AskedClinic.open(service.address());
      HttpResponse<String> answer = clinic.add();
      for (int i = 0; i < 2000 && answer.statusCode() == 201; i++) {
        answer = clinic.add();
      }
      assertTrue(clinic.acknowledged() > 10);
      assertOutOfOrder(service, clinic, file().toString());
      disk.makeRoom(service);
      assertHeals(service, clinic);
    }
  }

  /** "orderly" is the stop before: SIGTERM or SIGKILL. */
  @ParameterizedTest
  @CsvSource({"true,90", "true,50", "true,0", "false,90", "false,50", "false,0"})
  void a_file_cut_short_is_never_taken_for_a_smaller_one(boolean orderly, int percent)
      throws Exception {
    AskedClinic clinic = stocked(orderly);
    Path whole = folder.resolve("whole");
    Files.copy(file(), whole);
    try (RandomAccessFile cut = new RandomAccessFile(file().toFile(), "rw")) {
      cut.setLength(cut.length() * percent / 100);
    }
    healsWith(whole, clinic);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void a_file_of_garbage_is_refused(boolean wholly) throws Exception {
    AskedClinic clinic = stocked(true);
    Path whole = folder.resolve("whole");
    Files.copy(file(), whole);
    byte[] bytes = Files.readAllBytes(file());
    Arrays.fill(bytes, wholly ? 0 : bytes.length / 2, bytes.length, (byte) 'x');
    Files.write(file(), bytes);
    healsWith(whole, clinic);
  }

  @Test
  void one_bit_of_what_a_wearer_wrote_is_not_changed_unnoticed() throws Exception {
    AskedClinic clinic = stocked(true);
    Path whole = folder.resolve("whole");
    Files.copy(file(), whole);
    byte[] bytes = Files.readAllBytes(file());
    String text = new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1);
    bytes[text.indexOf("rides up at the back") + 2] ^= 1; // "riees"
    Files.write(file(), bytes);
    healsWith(whole, clinic);
  }

  private void healsWith(Path whole, AskedClinic clinic) throws Exception {
    Path file = file();
    byte[] damaged = Files.readAllBytes(file);
    try (PackagedService service = begin()) {
      clinic.at(service.address());
      assertOutOfOrder(service, clinic, file.toString());
      assertTrue(Arrays.equals(damaged, Files.readAllBytes(file)), "nothing is written over it");
      Files.copy(whole, file.resolveSibling("put-back"));
      Files.move(file.resolveSibling("put-back"), file, StandardCopyOption.ATOMIC_MOVE);
      assertHeals(service, clinic);
    }
  }

  @Test
  void a_file_taken_away_while_it_is_used_loses_nothing_acknowledged() throws Exception {
    try (PackagedService service = begin()) {
      AskedClinic clinic = AskedClinic.open(service.address());
      assertEquals(201, clinic.add().statusCode());
      Path file = file();
      Path away = folder.resolve("away");
      Files.move(file, away);
      assertOutOfOrder(service, clinic, file.getParent().toString());
      Files.move(away, file);
      assertHeals(service, clinic);
    }
  }

  @Test
  void a_file_cut_short_while_it_is_used_is_noticed() throws Exception {
    try (PackagedService service = begin()) {
      AskedClinic clinic = AskedClinic.open(service.address());
      for (int i = 0; i < 30; i++) {
        assertEquals(201, clinic.add().statusCode());
      }
      Path whole = folder.resolve("whole");
      Files.copy(file(), whole);
      try (RandomAccessFile cut = new RandomAccessFile(file().toFile(), "rw")) {
        cut.setLength(cut.length() / 2);
      }
      assertOutOfOrder(service, clinic, file().toString());
      Files.copy(whole, file(), StandardCopyOption.REPLACE_EXISTING);
      assertHeals(service, clinic);
    }
  }

  @Test
  void a_second_process_on_the_same_file_is_refused_and_takes_over_when_the_first_ends()
      throws Exception {
    try (PackagedService first = begin()) {
      AskedClinic clinic = AskedClinic.open(first.address());
      clinic.add();
      try (PackagedService second = begin()) {
        clinic.at(second.address());
        assertOutOfOrder(second, clinic, file().toString());
        clinic.at(first.address());
        assertEquals(201, clinic.add().statusCode(), "the first is not disturbed");
        assertEquals(200, first.readiness());
        first.close();
        clinic.at(second.address());
        assertHeals(second, clinic);
      }
    }
  }

  /** The file was made by the service as of commit c9cbdc4, which kept clinics in H2. */
  @Test
  void a_file_of_the_earlier_engine_is_refused_and_left_alone() throws Exception {
    Path earlier = folder.resolve("store").resolve("clinics.mv.db");
    Files.createDirectories(earlier.getParent());
    Files.copy(Path.of("src/test/resources/easewright/clinic/earlier.mv.db"), earlier);
    byte[] before = Files.readAllBytes(earlier);
    try (PackagedService service = begin()) {
      AskedClinic stranger = AskedClinic.nobodys(service.address());
      HttpResponse<String> refused = null;
      for (int i = 0; i < TRIES; i++) {
        refused =
            stranger.sendTo("/v1/clinics", "{\"name\": \"Circle\", \"organiser\": \"Odile\"}");
        assertEquals(503, refused.statusCode(), refused.body());
        assertEquals(503, service.readiness());
      }
      assertTrue(refused.headers().firstValue("Retry-After").isPresent());
      assertToldOnce(service, earlier.toString());
      assertTrue(Arrays.equals(before, Files.readAllBytes(earlier)));
      Files.move(earlier, folder.resolve("moved-away"));
      long end = System.nanoTime() + HEALED_WITHIN_MS * 1_000_000;
      while (service.readiness() != 200 && System.nanoTime() < end) {
        Thread.sleep(100);
      }
      assertHeals(service, AskedClinic.open(service.address()));
    }
  }
}
