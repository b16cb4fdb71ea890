package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.check.ClothCheck;
import easewright.check.SizeCheck;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Diagnosis;
import easewright.diagnosis.WordsLeft;
import easewright.fitting.Fitting;
import easewright.modelreader.ModelReader;
import easewright.pattern.PatternSheets;
import easewright.reading.TrainedReader;
import easewright.reply.Addressee;
import easewright.reply.Aside;
import easewright.reply.Speaker;
import easewright.request.CheckReader;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.request.IntakeAnswer;
import easewright.request.KnownNames;
import easewright.request.NotAFitQuestion;
import easewright.request.SoFar;
import easewright.request.Standing;
import easewright.request.TextFitting;
import easewright.request.TextReader;
import easewright.request.WordsToReview;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBook;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** A rule book with its request reader and its diagnosis. */
public record Edition(
    RuleBook book,
    FittingReader reader,
    Diagnosis diagnosis,
    CheckReader checkReader,
    SizeCheck sizeCheck,
    ClothCheck clothCheck,
    TextReader texts) {

  /** Prepares a book to answer. */
  static Edition of(RuleBook book, PatternSheets sheets) {
    KnownNames known = KnownNames.of(book.source(), sheets);
    FittingReader reader = new FittingReader(known);
    Diagnosis diagnosis = new Diagnosis(book, sheets.shipped());
    return new Edition(
        book,
        reader,
        diagnosis,
        new CheckReader(known),
        new SizeCheck(book, diagnosis),
        new ClothCheck(book, diagnosis),
        new TextReader(book.source(), sheets));
  }

  /** The same book, with the signs of each text read a second time. */
  Edition readingWith(TrainedReader second) {
    return readingBy(texts.with(second));
  }

  /** The same book, with each text read by a language model too. */
  Edition readingWith(ModelReader third) {
    return readingBy(texts.with(third));
  }

  private Edition readingBy(TextReader other) {
    return new Edition(book, reader, diagnosis, checkReader, sizeCheck, clothCheck, other);
  }

  /**
   * Answers an invented fitting before the book is used: a book that cannot answer must not be
   * activated, and the first client should not wait for class loading.
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
   * Reads one fitting, including its text, and answers it; the answer includes the request to
   * continue from.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public Answer answer(JsonNode request) {
    return answer(request, Standing.NONE);
  }

  /**
   * The same for the next round of a case: dangers and circumstances still open from earlier rounds
   * count, and an answer that stops for one asks whether it has been dealt with.
   */
  Answer answer(JsonNode request, Standing standing) {
    IntakeAnswer text = texts.read(request).orElse(null);
    JsonNode whole = texts.withSheet(WordsToReview.with(request, text));
    List<String> again =
        whole instanceof ObjectNode all
            ? standing.putInto(all, request.has(WordsToReview.FIELD))
            : List.of();
    Fitting fitting = fitting(whole, text);
    Answer answer =
        diagnosis.answer(
            fitting,
            new WordsLeft(
                !whole.path(WordsToReview.FIELD).isEmpty(),
                text != null && text.leavesAStatementOf(request.path("text").asText())));
    if (!again.isEmpty()) {
      String names = again.stream().map(book.catalog()::nameOf).collect(Collectors.joining("; "));
      answer = answer.asking(book.source().wording().say("danger-told-earlier", "signs", names));
    }
    answer = answer.goingOnFrom(SoFar.of(whole, fitting), text == null ? null : text.asJson());
    return answer.saying(new Speaker(book.source()).paragraphs(answer, addressee(whole)));
  }

  /** What to say to a text that gets no answer, paragraph by paragraph. */
  List<String> aside(NotAFitQuestion text, JsonNode request) {
    return new Aside(book.source())
        .paragraphs(
            request.path("text").textValue(), text.language().orElse(null), addressee(request));
  }

  private static Addressee addressee(JsonNode request) {
    return new Addressee(
        request.path("nickname").textValue(),
        request.path("voice").asText().equals("plain"),
        request.path("opening").textValue(),
        request.path("closing").textValue());
  }

  /** Ids of the signs that are dangers. */
  Set<String> dangers() {
    return book.catalog().signs().values().stream()
        .filter(SignEntry::redFlag)
        .map(SignEntry::id)
        .collect(Collectors.toSet());
  }

  /**
   * Reads one fitting, including its text, without answering it, and returns the request to
   * continue from.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  ObjectNode check(JsonNode request) {
    IntakeAnswer text = texts.read(request).orElse(null);
    JsonNode whole = texts.withSheet(WordsToReview.with(request, text));
    return SoFar.of(whole, fitting(whole, text));
  }

  private Fitting fitting(JsonNode whole, IntakeAnswer text) {
    try {
      return reader.read(whole, text != null && text.mayBeAskedBack());
    } catch (FaultyRequest refused) {
      throw text == null ? refused : refused.atText(TextFitting.saidByText(text));
    }
  }

  /**
   * Reads a text without answering it.
   *
   * @throws FaultyRequest if there is no text or it is too long
   */
  IntakeAnswer read(JsonNode request) {
    return texts.readAnything(request);
  }
}
