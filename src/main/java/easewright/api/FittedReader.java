package easewright.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.clinic.Fitted;
import easewright.clinic.Rounds.Told;
import easewright.diagnosis.Answer;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
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
   * Reads the first fitting of a case, its text included, and answers it.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public Fitted read(byte[] body) {
    return read(body, List.of());
  }

  /** What still stands of what the rounds of a case told, oldest first. */
  public Standing standing(List<Told> rounds) {
    return Standing.after(rounds, rules.now().dangers());
  }

  /**
   * The same for the next fitting of a case: a danger or a circumstance told in an earlier round
   * stands until it is told that it does not.
   *
   * @param rounds the rounds before it, oldest first
   */
  public Fitted read(byte[] body, List<Told> rounds) {
    JsonNode request = RequestJson.parse(body);
    Answer answer = rules.answer(request, standing(rounds));
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
