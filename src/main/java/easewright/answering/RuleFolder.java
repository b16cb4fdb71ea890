package easewright.answering;

import easewright.pattern.PatternSheets;
import easewright.rulebook.check.BookProblem;
import io.quarkus.runtime.LaunchMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jboss.logging.Logger;

/**
 * Watches the folder a rule book is read from. Checks and compiles a changed book in a separate
 * thread, so that no answer waits for it; never activates a faulty one.
 */
public final class RuleFolder {
  private static final Logger LOG = Logger.getLogger(RuleFolder.class);

  private final Optional<Path> folder;
  private final PatternSheets sheets;
  private final Consumer<Edition> sound;
  private final Optional<FolderWatch> watch;
  private volatile State state;

  /**
   * State of the active book relative to its folder.
   *
   * @param own whether the book is read from its writer's folder
   * @param reading whether a changed book is being read now
   * @param problems faults of the folder's book, which keep the previous book active
   */
  public record State(boolean own, boolean reading, List<BookProblem> problems) {}

  /**
   * @param folder empty if the compiled-in book must not be replaced
   * @param sound receives each changed book without faults
   */
  RuleFolder(Optional<Path> folder, PatternSheets sheets, Consumer<Edition> sound) {
    this.folder = folder;
    this.sheets = sheets;
    this.sound = sound;
    this.state = new State(folder.isPresent(), false, List.of());
    this.watch =
        folder.map(
            own ->
                new FolderWatch(
                    "rule-folder", own, Integer.MAX_VALUE, this::changing, this::changed));
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
    watch.ifPresent(FolderWatch::start);
  }

  void stop() {
    watch.ifPresent(FolderWatch::stop);
  }

  State state() {
    return state;
  }

  private void changing() {
    state = new State(true, true, state.problems());
  }

  private void changed() {
    try {
      sound.accept(new OwnBook(sheets).load(folder.orElseThrow()));
      state = new State(true, false, List.of());
      LOG.info("The rule book was read anew.");
    } catch (BrokenBook broken) {
      state = new State(true, false, broken.problems());
      LOG.error("The rule book stays as it was. " + broken.getMessage());
    }
  }
}
