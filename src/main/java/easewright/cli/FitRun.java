package easewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.api.FaultyRequest;
import easewright.api.FittingResource;
import easewright.api.LineAnswers;
import easewright.api.Problem;
import easewright.api.RequestJson;
import easewright.api.RequestLines;
import easewright.api.RequestLines.Line;
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

/**
 * Answers what stands in a file: the answer to standard output, what is wrong to standard error.
 */
@Singleton
@Unremovable
class FitRun implements QuarkusApplication {
  static final int FAULTY = 2;
  private static final int NO_FILE = 1;
  private static final int PIECE = 64 * 1024;

  private final FittingResource fittings;
  private final LineAnswers lineAnswers;
  private final ObjectMapper json;

  FitRun(FittingResource fittings, LineAnswers lineAnswers, ObjectMapper json) {
    this.fittings = fittings;
    this.lineAnswers = lineAnswers;
    this.json = json;
  }

  @Override
  public int run(String... args) {
    Fit fit = Commands.fit(args);
    try (InputStream in =
        fit.file().equals("-") ? System.in : Files.newInputStream(Path.of(fit.file()))) {
      return fit.lines() ? answerLines(in) : answer(in.readNBytes(RequestJson.MOST_BYTES + 1), fit);
    } catch (IOException | InvalidPathException unreadable) {
      System.err.println("The file can't be read: " + fit.file());
      return NO_FILE;
    }
  }

  private int answer(byte[] text, Fit fit) throws IOException {
    try {
      byte[] request = isJson(text) ? text : post(text, fit.pattern());
      print(
          fit.json()
              ? json.writeValueAsString(fittings.json(request))
              : fittings.markdown(request).strip());
      return 0;
    } catch (FaultyRequest request) {
      return refuse(Problem.of(request));
    } catch (RequestJson.TooLarge request) {
      return refuse(Problem.tooLarge(RequestJson.MOST_BYTES / 1024 + " KB"));
    }
  }

  private int answerLines(InputStream in) throws IOException {
    RequestLines lines = new RequestLines();
    boolean refused = false;
    byte[] piece = new byte[PIECE];
    for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
      lines.add(Arrays.copyOf(piece, read));
      for (Optional<Line> line = lines.next(); line.isPresent(); line = lines.next()) {
        refused |= answer(line.get());
        if (System.out.checkError()) {
          return 0; // nobody reads on
        }
      }
    }
    Optional<Line> last = lines.last();
    refused |= last.isPresent() && answer(last.get());
    System.out.flush();
    return refused ? FAULTY : 0;
  }

  private boolean answer(Line line) {
    LineAnswers.Reply reply = lineAnswers.reply(line);
    System.out.writeBytes(reply.line());
    return reply.refused();
  }

  /** Whether a text begins as a JSON object does; a byte order mark may stand before it. */
  private static boolean isJson(byte[] text) {
    return words(text).startsWith("{");
  }

  /** The request that asks about a post in plain words. */
  private byte[] post(byte[] text, String pattern) throws IOException {
    ObjectNode request = json.createObjectNode().put("text", words(text));
    if (pattern != null) {
      request.putObject("pattern").put("sheet", pattern);
    }
    return json.writeValueAsBytes(request);
  }

  private static String words(byte[] text) {
    return new String(text, UTF_8).replaceFirst("^\uFEFF", "").strip();
  }

  private static void print(String answer) {
    // In UTF-8 whatever the locale, as over HTTP.
    System.out.writeBytes((answer + "\n").getBytes(UTF_8));
    System.out.flush();
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
