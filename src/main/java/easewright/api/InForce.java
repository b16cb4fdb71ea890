package easewright.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.check.ClothCheck;
import easewright.check.SizeCheck;
import easewright.deadline.Deadline;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.RuleBookStamp;
import easewright.diagnosis.Diagnosis;
import easewright.diagnosis.Fitting;
import easewright.pattern.PatternSheets;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookFault;
import io.quarkus.runtime.LaunchMode;
import io.quarkus.runtime.Startup;
import jakarta.inject.Provider;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * The rule book in force, and what is made of it: the one compiled into the application. In
 * development it is read anew whenever a file of the rule book has changed.
 */
@Startup
@Singleton
public class InForce {
  private static final Logger LOG = Logger.getLogger(InForce.class);

  private final PatternSheets sheets;
  private final Optional<Path> folder;
  private final Duration mostTime;
  private volatile Edition edition;
  private long lastChange;

  InForce(
      Provider<PatternSheets> shippedSheets,
      @ConfigProperty(name = "easewright.limit.time") Duration mostTime) {
    this.mostTime = mostTime;
    // The two dear parts of a start share nothing, so they are read side by side.
    FutureTask<RuleBook> book = new FutureTask<>(RuleBook::compiledIn);
    new Thread(book, "rule-book").start();
    this.sheets = shippedSheets.get();
    this.folder = folder();
    this.lastChange = folder.map(InForce::lastChange).orElse(0L);
    this.edition = edition(done(book));
    answerOnce();
    new Thread(edition.texts()::prepare, "everyday-words").start();
  }

  /**
   * Answers an invented fitting before the service reports ready: a book that cannot answer should
   * not start, and the first asker should not wait for classes to load.
   */
  private void answerOnce() {
    edition.answer(
        JsonNodeFactory.instance
            .objectNode()
            .set(
                "body",
                JsonNodeFactory.instance
                    .objectNode()
                    .put("bust", "94 cm")
                    .put("underbust", "77 cm")));
  }

  /** A rule book with its reader of requests and its diagnosis. */
  record Edition(
      RuleBook book,
      FittingReader reader,
      Diagnosis diagnosis,
      CheckReader checkReader,
      SizeCheck sizeCheck,
      ClothCheck clothCheck,
      TextReader texts) {

    /**
     * Reads one fitting, its text included, and answers it, with the request to go on from.
     *
     * @throws FaultyRequest naming every fault of the request
     */
    Answer answer(JsonNode request) {
      return answer(request, Standing.NONE);
    }

    /**
     * The same for the next round of a case: what stands from earlier rounds counts, and an answer
     * that stops for it asks whether it has been seen to.
     */
    Answer answer(JsonNode request, Standing standing) {
      IntakeAnswer text = texts.read(request).orElse(null);
      JsonNode whole = Unjudged.with(request, text);
      List<String> again =
          whole instanceof ObjectNode all
              ? standing.putInto(all, request.has(Unjudged.FIELD))
              : List.of();
      Fitting fitting = fitting(whole, text);
      Answer answer = diagnosis.answer(fitting, !whole.path(Unjudged.FIELD).isEmpty());
      if (!again.isEmpty()) {
        String names = again.stream().map(book.catalog()::nameOf).collect(Collectors.joining("; "));
        answer = answer.asking(book.source().wording().say("danger-told-earlier", "signs", names));
      }
      return answer.goingOnFrom(SoFar.of(whole, fitting), text == null ? null : text.asJson());
    }

    /** Ids of the signs that are dangers. */
    Set<String> dangers() {
      return book.catalog().signs().values().stream()
          .filter(SignEntry::redFlag)
          .map(SignEntry::id)
          .collect(Collectors.toSet());
    }

    /**
     * Reads one fitting, its text included, without answering it: the request to go on from.
     *
     * @throws FaultyRequest naming every fault of the request
     */
    ObjectNode check(JsonNode request) {
      IntakeAnswer text = texts.read(request).orElse(null);
      JsonNode whole = Unjudged.with(request, text);
      return SoFar.of(whole, fitting(whole, text));
    }

    private Fitting fitting(JsonNode whole, IntakeAnswer text) {
      try {
        return reader.read(whole);
      } catch (FaultyRequest refused) {
        throw text == null ? refused : refused.atText(TextFitting.saidByText(text));
      }
    }

    /**
     * Reads a text and answers nothing.
     *
     * @throws FaultyRequest when there is no text or it is too long
     */
    IntakeAnswer read(JsonNode request) {
      return texts.readAnything(request);
    }
  }

  /**
   * Does some work on a request within the time that one answer may take.
   *
   * @throws easewright.deadline.DeadlinePassed when it takes longer
   */
  <T> T inTime(Supplier<T> work) {
    return Deadline.within(mostTime, work);
  }

  /**
   * Reads one fitting and answers it, in time.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  Answer answer(JsonNode request) {
    return answer(request, Standing.NONE);
  }

  /** The same for the next round of a case. */
  Answer answer(JsonNode request, Standing standing) {
    Edition edition = now();
    return inTime(() -> edition.answer(request, standing));
  }

  /** Which rule book is in force. */
  public RuleBookStamp ruleBook() {
    RuleBook book = now().book();
    return new RuleBookStamp(book.source().version(), book.source().hash());
  }

  Edition now() {
    folder.ifPresent(this::readAnewIfChanged);
    return edition;
  }

  private Edition edition(RuleBook book) {
    KnownNames known = KnownNames.of(book.catalog(), sheets);
    FittingReader reader = new FittingReader(known);
    Diagnosis diagnosis = new Diagnosis(book, sheets.shipped());
    return new Edition(
        book,
        reader,
        diagnosis,
        new CheckReader(known, reader),
        new SizeCheck(book, diagnosis),
        new ClothCheck(book, diagnosis),
        new TextReader(book.source(), sheets));
  }

  /** The folder named by {@code -Deasewright.rules=}, or the project's own in development mode. */
  private static Optional<Path> folder() {
    String named = System.getProperty("easewright.rules");
    List<String> candidates =
        named != null
            ? List.of(named)
            : LaunchMode.current() == LaunchMode.DEVELOPMENT
                ? List.of("rules", "../rules")
                : List.of();
    return candidates.stream()
        .map(Path::of)
        .filter(path -> Files.exists(path.resolve("vocabulary.dsl")))
        .findFirst();
  }

  private static RuleBook done(FutureTask<RuleBook> book) {
    try {
      return book.get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("The rule book cannot be loaded.", e);
    }
  }

  private synchronized void readAnewIfChanged(Path rules) {
    long change = lastChange(rules);
    if (change == lastChange) {
      return;
    }
    lastChange = change;
    try {
      edition = edition(RuleBook.compile(rules));
      LOG.info("The rule book was read anew.");
    } catch (RuleBookFault fault) {
      LOG.error("The rule book stays as it was: " + fault.getMessage());
    }
  }

  private static long lastChange(Path rules) {
    try (Stream<Path> files = Files.walk(rules)) {
      return files.mapToLong(file -> file.toFile().lastModified()).max().orElse(0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
