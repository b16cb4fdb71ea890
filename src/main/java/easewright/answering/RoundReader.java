package easewright.answering;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.clinic.Fitted;
import easewright.clinic.Rounds.Told;
import easewright.diagnosis.Answer;
import easewright.request.Standing;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;

/** Answers a fitting so that it can become a round of a case. */
@Singleton
public class RoundReader {
  private final RuleBookService rules;
  private final FittingService answering;
  private final ObjectMapper json;

  RoundReader(RuleBookService rules, FittingService answering, ObjectMapper json) {
    this.rules = rules;
    this.answering = answering;
    this.json = json;
  }

  /**
   * Reads the first fitting of a case, its text included, and answers it.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public Fitted read(JsonNode request) {
    return read(request, List.of());
  }

  /** What still stands of what the rounds of a case told, oldest first. */
  public Standing standing(List<Told> rounds) {
    return Standing.after(rounds, rules.edition().dangers());
  }

  /**
   * The same for the next fitting of a case: a danger or a circumstance told in an earlier round
   * stands until it is told that it does not.
   *
   * @param rounds the rounds before it, oldest first
   */
  public Fitted read(JsonNode request, List<Told> rounds) {
    Answer answer = answering.answer(request, standing(rounds));
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
