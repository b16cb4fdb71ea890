package easewright.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.clinic.Fitted;
import easewright.diagnosis.Answer;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Answers a fitting so that it can become a round of a case. */
@Singleton
public class FittedReader {
  private final InForce rules;
  private final ObjectMapper json;

  FittedReader(InForce rules, ObjectMapper json) {
    this.rules = rules;
    this.json = json;
  }

  /**
   * Reads a fitting, its text included, and answers it.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public Fitted read(byte[] body) {
    JsonNode request = RequestJson.parse(body);
    Answer answer = rules.answer(request);
    try {
      // Written and read again, so that numbers are kept as they are told.
      JsonNode advice =
          json.readTree(json.writeValueAsBytes(answer.goingOnFrom(null, answer.read())));
      return Fitted.of(request.path("text").textValue(), answer, advice);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** The advice as it was given; nothing where an older service wrote what can't be read here. */
  public Optional<Answer> asGiven(Fitted fitted) {
    try {
      Answer advice = json.treeToValue(fitted.advice(), Answer.class);
      return Optional.of(advice.goingOnFrom(fitted.request(), advice.read()));
    } catch (JsonProcessingException otherwise) {
      return Optional.empty();
    }
  }
}
