package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.deadline.Deadline;
import easewright.english.OtherLanguage;
import easewright.intake.Intake;
import easewright.intake.Reading;
import easewright.modelreader.ModelReader;
import easewright.modelreader.ModelReading;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import easewright.pattern.PatternSheets;
import easewright.pattern.SizeNames;
import easewright.reading.TrainedReader;
import easewright.request.IntakeAnswer.ReadYourselfNote;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Voice;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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

  static final String TEXT = "text";
  private static final String ASKED = "asked";

  private final RuleBookSource book;
  private final PatternSheets sheets;
  private final FamilyNames families;
  private final OtherLanguage languages;
  private final FutureTask<Intake> intake;
  private final Optional<TrainedReader> trained;
  private final Optional<AskedModel> model;

  /** Phrases are prepared in the background, so start-up does not wait for them. */
  public TextReader(RuleBookSource book, PatternSheets sheets) {
    this(
        book, sheets, new FutureTask<>(() -> new Intake(book)), Optional.empty(), Optional.empty());
  }

  private TextReader(
      RuleBookSource book,
      PatternSheets sheets,
      FutureTask<Intake> intake,
      Optional<TrainedReader> trained,
      Optional<AskedModel> model) {
    this.book = book;
    this.sheets = sheets;
    this.families = new FamilyNames(book, sheets);
    this.languages = new OtherLanguage(new WordLists(book.everyday().reader()));
    this.intake = intake;
    this.trained = trained;
    this.model = model;
  }

  /** The same reader, with the signs of each text read a second time. */
  public TextReader with(TrainedReader second) {
    return new TextReader(book, sheets, intake, Optional.of(second), model);
  }

  /** The same reader, with each text read by a language model too. */
  public TextReader with(ModelReader third) {
    return new TextReader(book, sheets, intake, trained, Optional.of(new AskedModel(third, book)));
  }

  /** The same request with the sheet itself where it names one that was sent before. */
  public JsonNode withSheet(JsonNode request) {
    return PatternReader.withSheet(request, sheets);
  }

  /** Prepares the phrases now, in the calling thread. */
  public void prepare() {
    intake.run();
  }

  /**
   * The request with its text read; empty if it has no text.
   *
   * @throws TextWithoutAnswer if the text is about something else
   * @throws FaultyRequest if the text is not a string, or too long
   */
  public Optional<IntakeAnswer> read(JsonNode request) {
    if (!request.isObject() || !request.has(TEXT)) {
      return Optional.empty();
    }
    IntakeAnswer read = readAnything(request);
    boolean other =
        read.kind().equals(IntakeAnswer.OTHER)
            || read.tellsOfNoGarment() && isThanks(request)
            || read.asksSomethingElse();
    if (other && !saysMore(request)) {
      String language = languages.of(request.path(TEXT).textValue()).orElse(null);
      String fault = language == null ? "fault-no-fit-question" : "fault-other-language";
      throw TextWithoutAnswer.ofOtherMatter(
          language,
          book.wording().say(fault, "language", language),
          book.wording().say(fault + "-remedy"));
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
    if (request.path(FamilyNames.FIELD).isTextual()) {
      families.known(request.path(FamilyNames.FIELD).textValue());
    }
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
    Optional<SheetNames.Named> sheet =
        rest.has("pattern") ? Optional.empty() : SheetNames.in(text.textValue(), sheets.offered());
    sheet.ifPresent(one -> rest.putObject("pattern").put("sheet", one.id()));
    Optional<FamilyNames.Called> family =
        rest.has("pattern") || rest.has(FamilyNames.FIELD)
            ? Optional.empty()
            : families.in(text.textValue());
    family.ifPresent(one -> rest.put(FamilyNames.FIELD, one.id()));
    SignEntry asked = book.catalog().signs().get(request.path(ASKED).textValue());
    ModelReading third =
        model.map(one -> one.read(text.textValue(), asked)).orElse(ModelReading.NOTHING);
    Reading reading = intake().read(text.textValue(), asked, trained, third);
    Optional<String> language =
        model.isPresent() || tellsOfDanger(reading)
            ? Optional.empty()
            : languages.of(text.textValue());
    return language
        .map(one -> notRead(text.textValue(), one, rest))
        .orElseGet(
            () ->
                TextFitting.merge(
                    text.textValue(), reading, rest, named(sheet, family), sizes(rest), book));
  }

  /** What was found by its name: where it now stands in the request, and its place in the text. */
  private static Map<String, TextSpan> named(
      Optional<SheetNames.Named> sheet, Optional<FamilyNames.Called> family) {
    Map<String, TextSpan> named = new LinkedHashMap<>();
    sheet.ifPresent(one -> named.put("/pattern", one.span()));
    family.ifPresent(one -> named.put("/" + FamilyNames.FIELD, one.span()));
    return named;
  }

  private boolean tellsOfDanger(Reading reading) {
    return reading.signs().stream()
        .anyMatch(one -> one.present() && book.catalog().signs().get(one.id()).redFlag());
  }

  /** A text in another language may say anything, so a person must read it. */
  private IntakeAnswer notRead(String text, String language, ObjectNode rest) {
    String why = book.wording().say("text-in-other-language", "language", language);
    return new IntakeAnswer(
        IntakeAnswer.OTHER,
        rest,
        List.of(),
        List.of(),
        List.of(new ReadYourselfNote(text, 0, text.length(), why)),
        List.of(),
        List.of());
  }

  /** A word of thanks, and nothing asked. */
  private boolean isThanks(JsonNode request) {
    String text = request.path(TEXT).textValue();
    return text.indexOf('?') < 0 && book.wording().voices().get(Voice.USUAL).talk().thanks(text);
  }

  private static boolean saysMore(JsonNode request) {
    return request.has("signs") || request.has("body") || request.has("cloth");
  }

  private Set<String> sizes(JsonNode request) {
    Set<String> sizes = new LinkedHashSet<>();
    String id = request.path("pattern").path("sheet").textValue();
    if (id != null) {
      sheets.find(id).map(SizeNames::all).ifPresent(sizes::addAll);
    }
    return sizes;
  }

  private Intake intake() {
    return Deadline.uncounted(this::prepared);
  }

  private Intake prepared() {
    intake.run(); // does nothing where it has been run, or is being run by another thread
    try {
      return intake.get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("The everyday words cannot be read.", e);
    }
  }
}
