package easewright.saying;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import easewright.check.ClothAnswer;
import easewright.check.SizeAnswer;
import easewright.diagnosis.Answer;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;

/**
 * Writes answers as JSON, lean or full: an {@link Answer}, a {@link SizeAnswer}, a {@link
 * ClothAnswer} or an {@link easewright.plan.CutPlan}.
 */
@Singleton
public class AnswerJson {
  /** What a lean answer is written with: no component of the view {@link Answer.Full}. */
  private interface Lean {}

  private final ObjectMapper json;
  private final ObjectWriter full;
  private final ObjectWriter lean;

  /** Writes as the service does, if the mapper is set up by {@link JsonFormat}. */
  public AnswerJson(ObjectMapper json) {
    this.json = json;
    full = json.writerWithView(Answer.Full.class);
    lean = json.writerWithView(Lean.class);
  }

  /** The same as {@link #bytes}, to be put into other JSON. */
  public JsonNode tree(Object answer, Detail detail) {
    try {
      return json.readTree(bytes(answer, detail));
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** JSON in UTF-8. */
  public byte[] bytes(Object answer, Detail detail) {
    try {
      return detail == Detail.FULL
          ? full.writeValueAsBytes(answer)
          : lean.writeValueAsBytes(lean(answer));
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("An answer can't be written.", impossible);
    }
  }

  /** The same with shorter lists, where every entry of the full ones is of the same kind. */
  private static Object lean(Object answer) {
    if (answer instanceof Answer fitting) {
      return LeanAnswer.of(fitting);
    }
    if (answer instanceof SizeAnswer size) {
      return LeanCheck.of(size);
    }
    return answer instanceof ClothAnswer cloth ? LeanCheck.of(cloth) : answer;
  }
}
