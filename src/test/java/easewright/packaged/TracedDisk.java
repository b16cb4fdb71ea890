package easewright.packaged;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is on the disk of a machine, as told by a trace of a process's system calls, and what a
 * power cut would leave of it: what was synced (POSIX, fsync, file and folder each), and of
 * everything else any part or none.
 */
final class TracedDisk {
  private static final Pattern OPEN =
      Pattern.compile("openat\\(AT_FDCWD, \"([^\"]*)\", ([^,)]*).*\\) += (\\d+).*");
  private static final Pattern WRITE =
      Pattern.compile("pwrite64\\((\\d+), \"([^\"]*)\", \\d+, (\\d+)\\) += (\\d+).*");
  private static final Pattern SYNC = Pattern.compile("f(?:data)?sync\\((\\d+)\\) += 0.*");
  private static final Pattern CUT = Pattern.compile("ftruncate\\((\\d+), (\\d+)\\) += 0.*");
  private static final Pattern UNLINK = Pattern.compile("unlink\\(\"([^\"]*)\"\\) += 0.*");
  private static final Pattern CLOSE = Pattern.compile("close\\((\\d+)\\) .*");

  private final Path folder;
  private final Map<Integer, String> open = new HashMap<>();

  /** Each file by name as the process sees it, and as it is on the disk for certain. */
  private final Map<String, byte[]> seen = new HashMap<>();

  private final Map<String, byte[]> synced = new HashMap<>();

  /** Writes since a file was synced last; and what the folder certainly lists. */
  private final Map<String, List<Written>> unsynced = new HashMap<>();

  private final Map<String, Boolean> listed = new HashMap<>();

  private record Written(int at, byte[] bytes) {}

  /**
   * A disk with one folder.
   *
   * @param before what the folder held before the trace, on the disk for certain
   */
  TracedDisk(Path before, Path folder) throws IOException {
    this.folder = folder;
    try (var files = Files.list(before)) {
      for (Path file : files.toList()) {
        String name = folder.resolve(file.getFileName()).toString();
        byte[] bytes = Files.readAllBytes(file);
        seen.put(name, bytes);
        synced.put(name, bytes);
        listed.put(name, true);
      }
    }
  }

  /** One call as strace -xx tells it, whole; calls that are none of the folder's change nothing. */
  void hear(String call) {
    Matcher told = OPEN.matcher(call);
    if (told.matches()) {
      opened(Integer.parseInt(told.group(3)), text(told.group(1)), told.group(2));
      return;
    }
    told = WRITE.matcher(call);
    if (told.matches() && open.containsKey(Integer.parseInt(told.group(1)))) {
      String file = open.get(Integer.parseInt(told.group(1)));
      byte[] bytes = Arrays.copyOf(bytes(told.group(2)), Integer.parseInt(told.group(4)));
      Written written = new Written(Integer.parseInt(told.group(3)), bytes);
      seen.put(file, with(seen.get(file), written));
      unsynced.computeIfAbsent(file, one -> new ArrayList<>()).add(written);
      return;
    }
    told = SYNC.matcher(call);
    if (told.matches() && open.containsKey(Integer.parseInt(told.group(1)))) {
      sync(open.get(Integer.parseInt(told.group(1))));
      return;
    }
    told = CUT.matcher(call);
    if (told.matches() && open.containsKey(Integer.parseInt(told.group(1)))) {
      String file = open.get(Integer.parseInt(told.group(1)));
      seen.put(file, Arrays.copyOf(seen.get(file), Integer.parseInt(told.group(2))));
      return;
    }
    told = UNLINK.matcher(call);
    if (told.matches()) {
      seen.remove(text(told.group(1)));
      return;
    }
    told = CLOSE.matcher(call);
    if (told.matches()) {
      open.remove(Integer.parseInt(told.group(1)));
    }
  }

  private void opened(int number, String path, String flags) {
    open.remove(number);
    if (!path.startsWith(folder.toString())) {
      return;
    }
    open.put(number, path);
    if (flags.contains("O_CREAT") && !seen.containsKey(path)) {
      seen.put(path, new byte[0]);
      synced.put(path, new byte[0]);
      unsynced.remove(path);
    }
  }

  private void sync(String path) {
    if (path.equals(folder.toString())) {
      listed.clear();
      seen.keySet().forEach(file -> listed.put(file, true));
    } else if (seen.containsKey(path)) {
      synced.put(path, seen.get(path));
      unsynced.remove(path);
    }
  }

  /** What a power cut now leaves, in a folder of its own; chance decides what was not synced. */
  void cut(Path into, Random chance) throws IOException {
    Files.createDirectories(into);
    for (Map.Entry<String, byte[]> file : synced.entrySet()) {
      boolean was = listed.containsKey(file.getKey());
      boolean is = seen.containsKey(file.getKey());
      if (was && is || was != is && chance.nextBoolean()) {
        byte[] left = file.getValue();
        for (Written written : unsynced.getOrDefault(file.getKey(), List.of())) {
          if (chance.nextBoolean()) {
            left = with(left, written);
          }
        }
        Files.write(into.resolve(Path.of(file.getKey()).getFileName()), left);
      }
    }
  }

  private static byte[] with(byte[] bytes, Written written) {
    int end = written.at + written.bytes.length;
    byte[] all = Arrays.copyOf(bytes, Math.max(bytes.length, end));
    System.arraycopy(written.bytes, 0, all, written.at, written.bytes.length);
    return all;
  }

  /** Bytes as strace -xx writes them. */
  static byte[] bytes(String hex) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(hex.length() / 4);
    for (int at = 0; at + 4 <= hex.length(); at += 4) {
      bytes.write(Integer.parseInt(hex.substring(at + 2, at + 4), 16));
    }
    return bytes.toByteArray();
  }

  static String text(String hex) {
    return new String(bytes(hex), java.nio.charset.StandardCharsets.UTF_8);
  }
}
