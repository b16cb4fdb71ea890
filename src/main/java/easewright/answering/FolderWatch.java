package easewright.answering;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/**
 * Watches a folder in a thread of its own, so that no answer waits for what is read from it. Looks
 * again and again rather than asking the system to tell: that works on every file system, mounted
 * ones included.
 */
final class FolderWatch {
  private static final Logger LOG = Logger.getLogger(FolderWatch.class);

  /** Polling interval, milliseconds. */
  private static final long PAUSE = 500;

  private final Path folder;
  private final int depth;
  private final Runnable changing;
  private final Runnable changed;
  private final Thread watching;
  private Map<String, Stamp> read;

  private record Stamp(long size, long modified) {}

  /**
   * A watch that notices every change from now on.
   *
   * @param name the thread's
   * @param depth how many levels of folders are watched, from 1
   * @param changing called when a change begins
   * @param changed called once the folder is still again; if it throws {@link UncheckedIOException}
   *     because a file is gone, it is called again
   */
  FolderWatch(String name, Path folder, int depth, Runnable changing, Runnable changed) {
    this.folder = folder;
    this.depth = depth;
    this.changing = changing;
    this.changed = changed;
    this.read = Files.isDirectory(folder) ? stamps() : Map.of();
    this.watching = new Thread(this::run, name);
    watching.setDaemon(true);
  }

  void start() {
    watching.start();
  }

  void stop() {
    watching.interrupt();
  }

  private void run() {
    try {
      while (true) {
        Thread.sleep(PAUSE);
        try {
          poll();
        } catch (UncheckedIOException moving) {
          // A file disappeared while the folder was read: the next pass reads the folder again.
          read = Map.of();
          LOG.debug("A watched folder changes just now.");
        }
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  /** Waits until the folder stops changing, so that nothing is read while it is being written. */
  private void poll() throws InterruptedException {
    Map<String, Stamp> now = stamps();
    if (now.equals(read)) {
      return;
    }
    changing.run();
    for (Map<String, Stamp> before = Map.of(); !now.equals(before); ) {
      Thread.sleep(PAUSE / 2);
      before = now;
      now = stamps();
    }
    read = now;
    changed.run();
  }

  /** Size and time of every file: a deleted file or an older copy also counts as a change. */
  private Map<String, Stamp> stamps() {
    Map<String, Stamp> stamps = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder, depth)) {
      for (Path file : files.toList()) {
        BasicFileAttributes about = Files.readAttributes(file, BasicFileAttributes.class);
        if (about.isRegularFile()) {
          stamps.put(
              folder.relativize(file).toString(),
              new Stamp(about.size(), about.lastModifiedTime().toMillis()));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return stamps;
  }
}
