package easewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.FittingService;
import easewright.answering.LineAnswers;
import easewright.diagnosis.Answer;
import easewright.request.FaultyRequest;
import easewright.request.RequestJson;
import easewright.request.RequestLines;
import easewright.request.RequestLines.Line;
import easewright.saying.AnswerJson;
import easewright.saying.Detail;
import easewright.saying.Problem;
import easewright.saying.ReplyLength;
import easewright.saying.ReplyWriter;
import io.quarkus.arc.Unremovable;
import io.quarkus.runtime.QuarkusApplication;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** Answers a file: prints the answer to standard output and faults to standard error. */
@Singleton
@Unremovable
class FitRun implements QuarkusApplication {
  static final int FAULTY = 2;
  private static final int NO_FILE = 1;
  private static final int PIECE = 64 * 1024;

  private final FittingService fittings;
  private final ReplyWriter replies;
  private final LineAnswers lineAnswers;
  private final AnswerJson answers;
  private final ObjectMapper json;

  FitRun(
      FittingService fittings,
      ReplyWriter replies,
      LineAnswers lineAnswers,
      AnswerJson answers,
      ObjectMapper json) {
    this.fittings = fittings;
    this.replies = replies;
    this.lineAnswers = lineAnswers;
    this.answers = answers;
    this.json = json;
  }

  @Override
  public int run(String... args) {
    Fit fit = Commands.fit(args);
    try (InputStream in =
        fit.file().equals("-") ? System.in : Files.newInputStream(Path.of(fit.file()))) {
      if (fit.lines() && (fit.family() != null || fit.nickname() != null || fit.voice() != null)) {
        System.err.println(
            "--family, --nickname and --voice are for one fitting; a line names its own.");
        return FAULTY;
      }
      if (fit.lines()) {
        return fit.pattern() == null ? answerLines(in, fit.detail()) : patternTwice();
      }
      return answer(in.readNBytes(RequestJson.MOST_BYTES + 1), fit);
    } catch (IOException | InvalidPathException unreadable) {
      System.err.println("The file can't be read: " + fit.file());
      return NO_FILE;
    }
  }

  private int answer(byte[] text, Fit fit) throws IOException {
    boolean post = !words(text).startsWith("{");
    if (!post && fit.pattern() != null) {
      return patternTwice();
    }
    try {
      JsonNode request = post ? post(text, fit.pattern()) : RequestJson.parse(text);
      print(said(fittings.answer(spoken(request, fit)), fit));
      return 0;
    } catch (FaultyRequest | RequestJson.TooLarge request) {
      return refuse(Problem.of(request));
    }
  }

  private String said(Answer answer, Fit fit) {
    if (fit.json()) {
      return new String(answers.bytes(answer, fit.detail()), UTF_8);
    }
    if (fit.text()) {
      return replies.text(answer, ReplyLength.SHORT, "");
    }
    return replies.markdown(answer, fit.shortly() ? ReplyLength.SHORT : ReplyLength.LONG, "");
  }

  private int answerLines(InputStream in, Detail detail) throws IOException {
    RequestLines lines = new RequestLines();
    boolean refused = false;
    byte[] piece = new byte[PIECE];
    for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
      lines.add(Arrays.copyOf(piece, read));
      for (Optional<Line> line = lines.next(); line.isPresent(); line = lines.next()) {
        refused |= answer(line.get(), detail);
        if (System.out.checkError()) {
          return 0; // the output was closed
        }
      }
    }
    Optional<Line> last = lines.last();
    refused |= last.isPresent() && answer(last.get(), detail);
    System.out.flush();
    return refused ? FAULTY : 0;
  }

  private boolean answer(Line line, Detail detail) {
    LineAnswers.Reply reply = lineAnswers.reply(line, detail);
    System.out.writeBytes(reply.line());
    return reply.refused();
  }

  /** The request for a post in plain words. */
  private JsonNode post(byte[] text, String pattern) {
    ObjectNode request = json.createObjectNode().put("text", words(text));
    if (pattern != null) {
      request.putObject("pattern").put("sheet", pattern);
    }
    return request;
  }

  /** With what the command line names, which counts before the file's. */
  private static JsonNode spoken(JsonNode request, Fit fit) {
    if (request instanceof ObjectNode fields) {
      if (fit.family() != null) {
        fields.put("family", fit.family());
      }
      if (fit.nickname() != null) {
        fields.put("nickname", fit.nickname());
      }
      if (fit.voice() != null) {
        fields.put("voice", fit.voice());
      }
    }
    return request;
  }

  /** A text without byte order mark and surrounding blanks. */
  private static String words(byte[] text) {
    return new String(text, UTF_8).replaceFirst("^\uFEFF", "").strip();
  }

  private static void print(String answer) {
    // UTF-8 whatever the locale, as over HTTP.
    System.out.writeBytes((answer.strip() + "\n").getBytes(UTF_8));
    System.out.flush();
  }

  private static int patternTwice() {
    System.err.println("--pattern is for a post in plain words; JSON names its pattern itself.");
    return FAULTY;
  }

  private static int refuse(Problem problem) {
    System.err.println(problem.title() + ". " + problem.detail());
    for (Problem.FaultNote fault : problem.faults()) {
      String place = fault.pointer().isEmpty() ? "" : fault.pointer() + ": ";
      System.err.println(place + fault.problem() + " " + fault.remedy());
    }
    return FAULTY;
  }
}
