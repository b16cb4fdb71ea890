package easewright.answering;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.check.ClothAnswer;
import easewright.check.ClothCheck;
import easewright.check.SizeAnswer;
import easewright.check.SizeCheck;
import easewright.check.SizeQuestion;
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
import easewright.request.FamilyNames;
import easewright.request.FaultyRequest;
import easewright.request.FittingReader;
import easewright.request.IntakeAnswer;
import easewright.request.KnownFamilies;
import easewright.request.SoFar;
import easewright.request.Standing;
import easewright.request.TextFitting;
import easewright.request.TextReader;
import easewright.request.TextWithoutAnswer;
import easewright.request.WordsToReview;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBook;
import easewright.rulebook.RuleBookSource;
import easewright.saying.Detail;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A rule book with its request reader and its diagnosis.
 *
 * @param book the usual family's, which knows those of the others
 * @param families which family a request is about
 * @param parts what each family has of its own
 */
public record Edition(
    RuleBook book,
    FamilyNames families,
    FittingReader reader,
    Diagnosis diagnosis,
    CheckReader checkReader,
    Map<String, Part> parts) {

  /** What is made from the rules and words of one family. */
  record Part(RuleBook book, SizeCheck sizeCheck, ClothCheck clothCheck, TextReader texts) {
    private static Part of(RuleBook book, Diagnosis diagnosis, PatternSheets sheets) {
      return new Part(
          book,
          new SizeCheck(book, diagnosis),
          new ClothCheck(book, diagnosis),
          new TextReader(book.source(), sheets));
    }

    private Part readingBy(TextReader other) {
      return new Part(book, sizeCheck, clothCheck, other);
    }
  }

  /** Prepares a book to answer. */
  static Edition of(RuleBook book, PatternSheets sheets) {
    KnownFamilies known = KnownFamilies.of(book.whole(), sheets);
    Diagnosis diagnosis = new Diagnosis(book, sheets.shipped());
    Map<String, Part> parts = new TreeMap<>();
    book.families().forEach((id, one) -> parts.put(id, Part.of(one, diagnosis, sheets)));
    return new Edition(
        book,
        new FamilyNames(book.source(), sheets),
        new FittingReader(known),
        diagnosis,
        new CheckReader(known),
        parts);
  }

  /**
   * The same book, with the signs of each text read a second time. The model knows the signs of the
   * usual family, so it reads texts about that only.
   */
  Edition readingWith(TrainedReader second) {
    Map<String, Part> read = new TreeMap<>(parts);
    read.computeIfPresent(
        families.usual(), (id, part) -> part.readingBy(part.texts().with(second)));
    return with(read);
  }

  /** The same book, with each text read by a language model too. */
  Edition readingWith(ModelReader third) {
    Map<String, Part> read = new TreeMap<>(parts);
    read.replaceAll((id, part) -> part.readingBy(part.texts().with(third)));
    return with(read);
  }

  private Edition with(Map<String, Part> others) {
    return new Edition(book, families, reader, diagnosis, checkReader, others);
  }

  /** Prepares the words of the usual family now, in the calling thread. */
  void prepareTexts() {
    usual().texts().prepare();
  }

  private Part usual() {
    return parts.get(families.usual());
  }

  private Part of(JsonNode request) {
    return parts.get(families.of(request));
  }

  /**
   * Which size to cut.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public SizeAnswer size(JsonNode request) {
    SizeQuestion question = checkReader.size(request);
    return parts.get(question.fitting().family()).sizeCheck().answer(question);
  }

  /** What a cloth or an elastic is suitable for. */
  ClothAnswer cloth(JsonNode request) {
    Fitting fitting = checkReader.cloth(request);
    return parts.get(fitting.family()).clothCheck().answer(fitting);
  }

  /** How to test cloth and elastic at home. */
  public ClothAnswer.ProtocolNote protocol() {
    return usual().clothCheck().protocol();
  }

  /**
   * Answers an invented fitting before the book is used: a book that cannot answer must not be
   * activated, and the first client should not wait for class loading.
   */
  void answerOnce() {
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    request.putObject("body").put("bust", "94 cm").put("underbust", "77 cm");
    answer(request);
  }

  /**
   * Reads one fitting, including its text, and answers it; the answer includes the request to
   * continue from.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public Answer answer(JsonNode request) {
    return answer(request, Standing.NONE, Detail.FULL);
  }

  /**
   * The same for the next round of a case: dangers and circumstances still open from earlier rounds
   * count, and an answer that stops for one asks whether it has been dealt with.
   *
   * @param detail how much of the answer will be sent as JSON
   */
  Answer answer(JsonNode request, Standing standing, Detail detail) {
    Part part = of(request);
    TextReader texts = part.texts();
    RuleBookSource source = part.book().source();
    IntakeAnswer text = texts.read(request).orElse(null);
    JsonNode whole = texts.withSheet(WordsToReview.with(request, text));
    List<String> again =
        whole instanceof ObjectNode all
            ? standing.putInto(all, request.has(WordsToReview.FIELD))
            : List.of();
    Fitting fitting = fitting(whole, text);
    WordsLeft left =
        new WordsLeft(
            !whole.path(WordsToReview.FIELD).isEmpty(),
            text != null && text.leavesAStatementOf(request.path("text").asText()));
    Answer answer = diagnosis.answer(fitting, left, detail == Detail.LEAN);
    if (!again.isEmpty()) {
      String names = again.stream().map(source.catalog()::nameOf).collect(Collectors.joining("; "));
      answer = answer.asking(source.wording().say("danger-told-earlier", "signs", names));
    }
    answer = answer.goingOnFrom(SoFar.of(whole, fitting), text == null ? null : text.asJson());
    return answer.saying(new Speaker(source).paragraphs(answer, addressee(whole)));
  }

  /** What to say to a text that gets no answer, paragraph by paragraph. */
  List<String> aside(TextWithoutAnswer text, JsonNode request) {
    Aside aside = new Aside(of(request).book().source());
    String said = request.path("text").textValue();
    return aside.paragraphs(said, text.language(), text.isUnclear(), addressee(request));
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
    TextReader texts = of(request).texts();
    IntakeAnswer text = texts.read(request).orElse(null);
    JsonNode whole = texts.withSheet(WordsToReview.with(request, text));
    return SoFar.of(whole, fitting(whole, text));
  }

  private Fitting fitting(JsonNode whole, IntakeAnswer text) {
    try {
      return reader.read(whole, text);
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
    return of(request).texts().readAnything(request);
  }
}
