package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.intake.Intake;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSheets;
import easewright.pattern.PatternSize;
import easewright.reading.TrainedReader;
import easewright.rulebook.RuleBookSource;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;

/** Reads a request's text, if it has one, and merges it into the request. */
public final class TextReader {
  /** A long post: about 600 words. */
  static final int MOST_CHARACTERS = 4000;

  /** Occurs in no real text, and not every store accepts it. */
  static final char NUL = 0;

  private static final String TEXT = "text";
  private static final String ASKED = "asked";

  private final RuleBookSource book;
  private final PatternSheets sheets;
  private final FutureTask<Intake> intake;
  private final Optional<TrainedReader> trained;

  /** Phrases are prepared in the background, so start-up does not wait for them. */
  public TextReader(RuleBookSource book, PatternSheets sheets) {
    this(book, sheets, new FutureTask<>(() -> new Intake(book)), Optional.empty());
  }

  private TextReader(
      RuleBookSource book,
      PatternSheets sheets,
      FutureTask<Intake> intake,
      Optional<TrainedReader> trained) {
    this.book = book;
    this.sheets = sheets;
    this.intake = intake;
    this.trained = trained;
  }

  /** The same reader, with the signs of each text read a second time. */
  public TextReader with(TrainedReader second) {
    return new TextReader(book, sheets, intake, Optional.of(second));
  }

  /** Prepares the phrases now, in the calling thread. */
  public void prepare() {
    intake.run();
  }

  /**
   * The request with its text read; empty if it has no text.
   *
   * @throws FaultyRequest if the text is not a string, too long, or not a fit question
   */
  public Optional<IntakeAnswer> read(JsonNode request) {
    if (!request.isObject() || !request.has(TEXT)) {
      return Optional.empty();
    }
    IntakeAnswer read = readAnything(request);
    if (read.kind().equals(IntakeAnswer.OTHER) && !saysMore(request)) {
      throw FaultyRequest.impossible(
          "/" + TEXT,
          book.wording().say("fault-no-fit-question"),
          book.wording().say("fault-no-fit-question-remedy"));
    }
    return Optional.of(read);
  }

  /**
   * The same for any text, a fit question or not.
   *
   * @throws FaultyRequest if there is no text or it is too long
   */
  public IntakeAnswer readAnything(JsonNode request) {
    JsonNode text = request.path(TEXT);
    if (!text.isTextual() || text.textValue().isBlank()) {
      throw FaultyRequest.unreadable(
          "/" + TEXT,
          book.wording().say("fault-no-post"),
          book.wording().say("fault-no-post-remedy"));
    }
    if (text.textValue().indexOf(NUL) >= 0) {
      throw FaultyRequest.unreadable(
          "/" + TEXT,
          book.wording().say("fault-post-with-nul"),
          book.wording().say("fault-post-with-nul-remedy"));
    }
    if (text.textValue().length() > MOST_CHARACTERS) {
      throw FaultyRequest.impossible(
          "/" + TEXT,
          book.wording().say("fault-long-post", "most", MOST_CHARACTERS),
          book.wording().say("fault-long-post-remedy"));
    }
    ObjectNode rest = request.deepCopy();
    rest.remove(List.of(TEXT, ASKED));
    String asked = request.path(ASKED).textValue();
    return TextFitting.merge(
        text.textValue(),
        intake().read(text.textValue(), book.catalog().signs().get(asked), trained),
        rest,
        sizes(request),
        book);
  }

  private static boolean saysMore(JsonNode request) {
    return request.has("signs") || request.has("body") || request.has("cloth");
  }

  private Set<String> sizes(JsonNode request) {
    Set<String> sizes = new LinkedHashSet<>();
    String id = request.path("pattern").path("sheet").textValue();
    if (id != null) {
      sheets
          .find(id)
          .map(PatternSheet::sizes)
          .ifPresent(all -> all.stream().map(PatternSize::name).forEach(sizes::add));
    }
    return sizes;
  }

  private Intake intake() {
    if (!intake.isDone()) {
      // In a separate thread: the first request has a deadline, and if it passed, preparation would
      // fail for all.
      new Thread(intake, "everyday-words").start();
    }
    try {
      return intake.get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("The everyday words cannot be read.", e);
    }
  }
}
