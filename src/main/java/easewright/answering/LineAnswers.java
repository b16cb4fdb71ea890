package easewright.answering;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.deadline.DeadlinePassed;
import easewright.diagnosis.Answer;
import easewright.request.FaultyRequest;
import easewright.request.RequestJson;
import easewright.request.RequestLines.Line;
import easewright.saying.AnswerJson;
import easewright.saying.Detail;
import easewright.saying.Problem;
import io.quarkus.logging.Log;
import jakarta.inject.Singleton;
import java.util.Arrays;

/** Answers each one-line fitting with one line, even if it has faults. */
@Singleton
public class LineAnswers {
  private final FittingService fittings;
  private final AnswerJson answers;
  private final ObjectMapper json;

  LineAnswers(FittingService fittings, AnswerJson answers, ObjectMapper json) {
    this.fittings = fittings;
    this.answers = answers;
    this.json = json;
  }

  /**
   * The reply to a line.
   *
   * @param line the answer, or the problem with the line's number, as JSON ending in a line feed
   * @param refused whether it is a problem
   */
  public record Reply(byte[] line, boolean refused) {}

  /** The reply to one line. */
  public Reply reply(Line line, Detail detail) {
    try {
      Answer answer = fittings.answer(request(line), detail);
      return new Reply(withLineFeed(answers.bytes(answer, detail)), false);
    } catch (FaultyRequest request) {
      return refusal(Problem.of(request), line.number());
    } catch (DeadlinePassed request) {
      return refusal(Problem.tookTooLong(), line.number());
    } catch (RequestJson.TooLarge request) {
      return refusal(Problem.tooLarge(RequestJson.MOST_BYTES / 1024 + " KB a line"), line.number());
    } catch (RuntimeException failure) {
      // A failure must not affect the other lines.
      Log.error("A line of a request failed", failure);
      return refusal(Problem.failed(), line.number());
    }
  }

  /** A problem as the reply to a line. */
  public Reply refusal(Problem problem, int line) {
    return new Reply(bytes(problem.atLine(line)), true);
  }

  private static JsonNode request(Line line) {
    if (line.tooLong()) {
      throw new RequestJson.TooLarge();
    }
    return RequestJson.parse(line.text(), line.number());
  }

  /** JSON on one line, ending in a line feed. */
  public byte[] bytes(Object answer) {
    try {
      return withLineFeed(json.writeValueAsBytes(answer));
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("An answer can't be written.", impossible);
    }
  }

  private static byte[] withLineFeed(byte[] text) {
    byte[] line = Arrays.copyOf(text, text.length + 1);
    line[text.length] = '\n';
    return line;
  }
}
