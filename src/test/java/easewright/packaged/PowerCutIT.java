package easewright.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.StoreAddress;
import easewright.clinic.StoreAway;
import easewright.clinic.Story;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;

/**
 * A power cut, which a killed process is not: the operating system's own memory is lost with it.
 * All that a writer does to its folder, and says to whoever listens, is recorded in one order
 * (strace); at moments drawn by chance the disk is put together as a cut would leave it, with what
 * was synced and any part of what was not, and must hold what had been acknowledged by then.
 */
@Tag("long")
@EnabledIf("easewright.packaged.PowerCutIT#canRun")
class PowerCutIT {
  private static final String NEEDED =
      "A power cut needs strace, on Debian: apt-get install strace";
  private static final Path STRACE = Path.of("/usr/bin/strace");
  private static final int ROUNDS = 120;
  private static final int ONE_CUT_IN = 8;
  private static final String UNFINISHED = "<unfinished ...>";
  private static final Pattern RESUMED = Pattern.compile("<\\.\\.\\. \\w+ resumed>(.*)");
  private static final Pattern ACKNOWLEDGED = Pattern.compile("(case|round) .*");
  private static final Pattern SAID = Pattern.compile("write\\(1, \"([^\"]*)\", \\d+\\) += \\d+");

  @TempDir Path folder;
  private final Random chance = new Random(20261128);
  private final List<String> acknowledged = new ArrayList<>();
  private final StringBuilder heard = new StringBuilder();
  private int cuts;
  private final List<String> lost = new ArrayList<>();

  /** Whether it is there; says so when not, and fails in CI. */
  static boolean canRun() {
    if (Files.isExecutable(STRACE)) {
      return true;
    }
    if ("true".equals(System.getenv("CI"))) {
      fail(NEEDED);
    }
    System.out.println("Skipped: " + NEEDED);
    return false;
  }

  @Test
  void a_power_cut_at_any_moment_leaves_what_was_acknowledged() throws Exception {
    Path store = folder.resolve("store");
    String key;
    try (ClinicStore made = open(store)) {
      key = made.clinics().open("Circle", "Odile", 30).key().text();
    }
    Path before = Files.createDirectory(folder.resolve("before"));
    Files.copy(store.resolve("clinics.db"), before.resolve("clinics.db"));
    Path trace = folder.resolve("trace");
    write(store, key, trace);

    replay(new TracedDisk(before, store), trace, key, call -> true);
    assertEquals(List.of(), lost);
    assertTrue(acknowledged.size() > ROUNDS / 2, acknowledged.size() + " acknowledged");
    assertTrue(cuts > ROUNDS / ONE_CUT_IN, cuts + " cuts");
    System.out.println(cuts + " power cuts, " + acknowledged.size() + " writes acknowledged");

    acknowledged.clear();
    replay(new TracedDisk(before, store), trace, key, call -> !call.contains("sync("));
    assertFalse(lost.isEmpty(), "without any sync, something would be lost");
  }

  private void replay(TracedDisk disk, Path trace, String key, Predicate<String> happened)
      throws IOException {
    Map<String, String> begun = new HashMap<>();
    try (BufferedReader lines = Files.newBufferedReader(trace)) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String[] told = line.split(" +", 2);
        String call = whole(begun, told[0], told[1]);
        if (call != null && happened.test(call)) {
          hear(disk, call, key);
        }
      }
    }
  }

  /**
   * A call that another thread's came between is told in two parts. A file is closed when its call
   * begins: its number may be given to another thread's file before the call is told to have ended.
   */
  private static String whole(Map<String, String> begun, String thread, String told) {
    if (told.endsWith(UNFINISHED)) {
      String first = told.substring(0, told.length() - UNFINISHED.length()).stripTrailing();
      if (first.startsWith("close(")) {
        return first + ") = ?";
      }
      begun.put(thread, first);
      return null;
    }
    Matcher resumed = RESUMED.matcher(told);
    if (!resumed.matches()) {
      return told;
    }
    String first = begun.remove(thread);
    return first == null ? null : first + resumed.group(1);
  }

  private void hear(TracedDisk disk, String call, String key) throws IOException {
    Matcher said = SAID.matcher(call);
    if (said.matches()) {
      heard.append(TracedDisk.text(said.group(1)));
      for (int end = heard.indexOf("\n"); end >= 0; end = heard.indexOf("\n")) {
        String line = heard.substring(0, end);
        if (ACKNOWLEDGED.matcher(line).matches()) { // the driver's helpers write there, too
          acknowledged.add(line);
        }
        heard.delete(0, end + 1);
      }
    } else {
      disk.hear(call);
    }
    boolean matters = said.matches() || call.startsWith("pwrite64") || call.startsWith("unlink");
    if (matters && !acknowledged.isEmpty() && chance.nextInt(ONE_CUT_IN * 4) == 0) {
      Path left = folder.resolve("cut" + cuts++);
      disk.cut(left, chance);
      try {
        look(left, key);
      } catch (AssertionError | StoreAway missing) {
        lost.add("Cut " + cuts + ": " + missing.getMessage());
      }
    }
  }

  private void look(Path left, String key) {
    try (ClinicStore store = open(left)) {
      Caller caller = store.keys().holder(key).orElseThrow();
      Map<String, Story> stories = new HashMap<>();
      store.clinics().export(caller).cases().forEach(one -> stories.put(one.current().id(), one));
      for (String line : acknowledged) {
        String[] told = line.split(" ");
        Story story = stories.get(told[1]);
        assertTrue(story != null, "The case is lost: " + line);
        if (told[0].equals("round")) {
          int number = Integer.parseInt(told[2]);
          assertTrue(story.rounds().size() >= number, "The round is lost: " + line);
          assertEquals(told[3], story.rounds().get(number - 1).fitted().post());
        }
      }
    }
  }

  private static ClinicStore open(Path store) {
    return new ClinicStore(StoreAddress.inFolder(store), Clock.systemUTC(), Duration.ofSeconds(10));
  }

  /** Lets a writer write for a while, and records what it does. */
  private void write(Path store, String key, Path trace) throws IOException, InterruptedException {
    Process writer =
        new ProcessBuilder(
                STRACE.toString(),
                "-f",
                "-xx",
                "-s",
                "200000",
                "-e",
                "trace=openat,pwrite64,write,fsync,fdatasync,ftruncate,unlink,close",
                "-o",
                trace.toString(),
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                PackagedService.jar() + File.pathSeparator + Path.of("target", "test-classes"),
                RoundWriter.class.getName(),
                key,
                store.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try (BufferedReader lines = writer.inputReader()) {
      for (int i = 0; i < ROUNDS && lines.readLine() != null; i++) {
        // It goes on until it has told enough.
      }
      writer.descendants().forEach(ProcessHandle::destroyForcibly);
      while (lines.readLine() != null) {
        // What was told besides.
      }
    } finally {
      writer.destroyForcibly().waitFor();
    }
  }
}
