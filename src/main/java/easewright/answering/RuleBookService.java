package easewright.answering;

import easewright.deadline.Deadline;
import easewright.diagnosis.Answer.RuleBookStamp;
import easewright.modelreader.ModelReader;
import easewright.pattern.PatternSheets;
import easewright.reading.TrainedReader;
import easewright.rulebook.RuleBook;
import io.quarkus.runtime.Startup;
import jakarta.annotation.PreDestroy;
import jakarta.inject.Provider;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The active rule book and the objects built from it: the book compiled into the application, or
 * one in its writer's folder, reloaded in the background when one of its files changes.
 */
@Startup
@Singleton
public class RuleBookService {
  private final PatternSheets sheets;
  private final Duration mostTime;
  private final RuleFolder folder;
  private final Optional<TrainedReader> trained;
  private final Optional<ModelReader> model;
  private volatile Edition edition;

  RuleBookService(
      Provider<PatternSheets> shippedSheets,
      @ConfigProperty(name = "easewright.limit.time") Duration mostTime,
      @ConfigProperty(name = "easewright.reader") ReaderChoice reader,
      LanguageModel languageModel) {
    this.mostTime = mostTime;
    this.trained =
        reader == ReaderChoice.BOTH ? Optional.of(TrainedReader.shipped()) : Optional.empty();
    this.model = languageModel.reader();
    Optional<Path> own = RuleFolder.named();
    // The two slow parts of start-up are independent, so they run in parallel.
    FutureTask<RuleBook> book = new FutureTask<>(RuleBook::compiledIn);
    if (own.isEmpty()) {
      new Thread(book, "rule-book").start();
    }
    this.sheets = shippedSheets.get();
    this.folder =
        new RuleFolder(own.or(RuleFolder::inDevelopment), sheets, next -> edition = read(next));
    // A broken own book stops the start: nobody should get another book's answers unknowingly.
    this.edition =
        read(
            own.isPresent() ? new OwnBook(sheets).load(own.get()) : Edition.of(done(book), sheets));
    edition.answerOnce();
    if (own.isEmpty()) {
      new Thread(edition::prepareTexts, "everyday-words").start();
    }
    folder.watch();
  }

  @PreDestroy
  void stop() {
    folder.stop();
  }

  /** State of the active book relative to its folder. */
  public RuleFolder.State state() {
    return folder.state();
  }

  /**
   * Runs work on a request within the time limit of one answer.
   *
   * @throws easewright.deadline.DeadlinePassed if it takes longer
   */
  public <T> T inTime(Supplier<T> work) {
    return Deadline.within(mostTime, work);
  }

  /** Identifies the active rule book. */
  public RuleBookStamp ruleBook() {
    RuleBook book = edition().book();
    return new RuleBookStamp(book.source().version(), book.source().hash());
  }

  /** The active rule book with its reader and diagnosis; fetch it once per request. */
  public Edition edition() {
    return edition;
  }

  private Edition read(Edition next) {
    Edition second = trained.map(next::readingWith).orElse(next);
    return model.map(second::readingWith).orElse(second);
  }

  private static RuleBook done(FutureTask<RuleBook> book) {
    try {
      return book.get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("The rule book cannot be loaded.", e);
    }
  }
}
