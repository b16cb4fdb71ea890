package easewright.answering;

import easewright.deadline.Deadline;
import easewright.diagnosis.Answer.RuleBookStamp;
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
 * The rule book in force, and what is made of it: the one compiled into the application, or one in
 * a folder of its writer, read anew beside the answering whenever one of its files has changed.
 */
@Startup
@Singleton
public class RuleBookService {
  private final PatternSheets sheets;
  private final Duration mostTime;
  private final RuleFolder folder;
  private final Optional<TrainedReader> trained;
  private volatile Edition edition;

  RuleBookService(
      Provider<PatternSheets> shippedSheets,
      @ConfigProperty(name = "easewright.limit.time") Duration mostTime,
      @ConfigProperty(name = "easewright.reader") ReaderChoice reader) {
    this.mostTime = mostTime;
    this.trained =
        reader == ReaderChoice.BOTH ? Optional.of(TrainedReader.shipped()) : Optional.empty();
    Optional<Path> own = RuleFolder.named();
    // The two dear parts of a start share nothing, so they are read side by side.
    FutureTask<RuleBook> book = new FutureTask<>(RuleBook::compiledIn);
    if (own.isEmpty()) {
      new Thread(book, "rule-book").start();
    }
    this.sheets = shippedSheets.get();
    this.folder =
        new RuleFolder(own.or(RuleFolder::inDevelopment), sheets, next -> edition = read(next));
    // An own book that is broken stops the start: nobody is to be answered by another unawares.
    this.edition =
        read(
            own.isPresent() ? new OwnBook(sheets).load(own.get()) : Edition.of(done(book), sheets));
    edition.answerOnce();
    if (own.isEmpty()) {
      new Thread(edition.texts()::prepare, "everyday-words").start();
    }
    folder.watch();
  }

  @PreDestroy
  void stop() {
    folder.stop();
  }

  /** How the book in force stands to the folder it is read from. */
  public RuleFolder.State state() {
    return folder.state();
  }

  /**
   * Does some work on a request within the time that one answer may take.
   *
   * @throws easewright.deadline.DeadlinePassed when it takes longer
   */
  public <T> T inTime(Supplier<T> work) {
    return Deadline.within(mostTime, work);
  }

  /** Which rule book is in force. */
  public RuleBookStamp ruleBook() {
    RuleBook book = edition().book();
    return new RuleBookStamp(book.source().version(), book.source().hash());
  }

  /** The rule book in force with what answers by it; take it once for a request. */
  public Edition edition() {
    return edition;
  }

  private Edition read(Edition next) {
    return trained.map(next::readingWith).orElse(next);
  }

  private static RuleBook done(FutureTask<RuleBook> book) {
    try {
      return book.get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("The rule book cannot be loaded.", e);
    }
  }
}
