package easewright.answering;

import easewright.pattern.PatternSheets;
import easewright.rulebook.check.BookProblem;
import io.quarkus.runtime.LaunchMode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/**
 * Watches the folder a rule book is read from. Checks and compiles a changed book in a separate
 * thread, so that no answer waits for it; never activates a faulty one.
 */
public final class RuleFolder {
  private static final Logger LOG = Logger.getLogger(RuleFolder.class);

  /** Polling interval, milliseconds. */
  private static final long PAUSE = 500;

  private final Optional<Path> folder;
  private final PatternSheets sheets;
  private final Consumer<Edition> sound;
  private final Thread watching = new Thread(this::run, "rule-folder");
  private Map<String, Stamp> read;
  private volatile State state;

  /**
   * State of the active book relative to its folder.
   *
   * @param own whether the book is read from its writer's folder
   * @param reading whether a changed book is being read now
   * @param problems faults of the folder's book, which keep the previous book active
   */
  public record State(boolean own, boolean reading, List<BookProblem> problems) {}

  private record Stamp(long size, long modified) {}

  /**
   * @param folder empty if the compiled-in book must not be replaced
   * @param sound receives each changed book without faults
   */
  RuleFolder(Optional<Path> folder, PatternSheets sheets, Consumer<Edition> sound) {
    this.folder = folder;
    this.sheets = sheets;
    this.sound = sound;
    this.state = new State(folder.isPresent(), false, List.of());
    this.read = folder.filter(Files::isDirectory).map(RuleFolder::stamps).orElse(Map.of());
    watching.setDaemon(true);
  }

  /** The folder named by {@code -Deasewright.rules=}. */
  static Optional<Path> named() {
    return Optional.ofNullable(System.getProperty("easewright.rules")).map(Path::of);
  }

  /** The project's own folder, in development mode. */
  static Optional<Path> inDevelopment() {
    return LaunchMode.current() != LaunchMode.DEVELOPMENT
        ? Optional.empty()
        : Stream.of("rules", "../rules")
            .map(Path::of)
            .filter(path -> Files.exists(path.resolve("vocabulary.dsl")))
            .findFirst();
  }

  void watch() {
    if (folder.isPresent()) {
      watching.start();
    }
  }

  void stop() {
    watching.interrupt();
  }

  State state() {
    return state;
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
          LOG.debug("The rule folder changes just now.");
        }
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  /** Waits until the folder stops changing, so that no book is read while it is being written. */
  private void poll() throws InterruptedException {
    Map<String, Stamp> now = stamps(folder.orElseThrow());
    if (now.equals(read)) {
      return;
    }
    state = new State(true, true, state.problems());
    for (Map<String, Stamp> before = Map.of(); !now.equals(before); ) {
      Thread.sleep(PAUSE / 2);
      before = now;
      now = stamps(folder.orElseThrow());
    }
    read = now;
    try {
      sound.accept(new OwnBook(sheets).load(folder.orElseThrow()));
      state = new State(true, false, List.of());
      LOG.info("The rule book was read anew.");
    } catch (BrokenBook broken) {
      state = new State(true, false, broken.problems());
      LOG.error("The rule book stays as it was. " + broken.getMessage());
    }
  }

  /** Size and time of every file: a deleted file or an older copy also counts as a change. */
  private static Map<String, Stamp> stamps(Path folder) {
    Map<String, Stamp> stamps = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
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
