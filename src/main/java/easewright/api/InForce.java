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
import io.quarkus.runtime.Startup;
import jakarta.annotation.PreDestroy;
import jakarta.inject.Provider;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The rule book in force, and what is made of it: the one compiled into the application, or one in
 * a folder of its writer, read anew beside the answering whenever one of its files has changed.
 */
@Startup
@Singleton
public class InForce {
  private final PatternSheets sheets;
  private final Duration mostTime;
  private final RuleFolder folder;
  private volatile Edition edition;

  InForce(
      Provider<PatternSheets> shippedSheets,
      @ConfigProperty(name = "easewright.limit.time") Duration mostTime) {
    this.mostTime = mostTime;
    Optional<Path> own = RuleFolder.named();
    // The two dear parts of a start share nothing, so they are read side by side.
    FutureTask<RuleBook> book = new FutureTask<>(RuleBook::compiledIn);
    if (own.isEmpty()) {
      new Thread(book, "rule-book").start();
    }
    this.sheets = shippedSheets.get();
    this.folder = new RuleFolder(own.or(RuleFolder::inDevelopment), sheets, next -> edition = next);
    // An own book that is broken stops the start: nobody is to be answered by another unawares.
    this.edition =
        own.isPresent() ? new OwnBook(sheets).load(own.get()) : Edition.of(done(book), sheets);
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
  RuleFolder.State state() {
    return folder.state();
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

    /** A book made ready to answer. */
    static Edition of(RuleBook book, PatternSheets sheets) {
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

    /**
     * Answers an invented fitting before the book is used: one that cannot answer should not come
     * into force, and the first asker should not wait for classes to load.
     */
    void answerOnce() {
      answer(
          JsonNodeFactory.instance
              .objectNode()
              .set(
                  "body",
                  JsonNodeFactory.instance
                      .objectNode()
                      .put("bust", "94 cm")
                      .put("underbust", "77 cm")));
    }

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
    return edition;
  }

  private static RuleBook done(FutureTask<RuleBook> book) {
    try {
      return book.get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("The rule book cannot be loaded.", e);
    }
  }
}
