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

/** Answers a fitting to be stored as a round of a case. */
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
   * Reads the first fitting of a case, including its text, and answers it.
   *
   * @throws FaultyRequest naming every fault of the request
   */
  public Fitted read(JsonNode request) {
    return read(request, List.of());
  }

  /** What the rounds of a case, oldest first, reported that still applies. */
  public Standing standing(List<Told> rounds) {
    return Standing.after(rounds, rules.edition().dangers());
  }

  /**
   * The same for the next fitting of a case: a danger or a circumstance reported in an earlier
   * round applies until it is reported otherwise.
   *
   * @param rounds the previous rounds, oldest first
   */
  public Fitted read(JsonNode request, List<Told> rounds) {
    Answer answer = answering.answer(request, standing(rounds));
    try {
      // Serialised and parsed again, so that numbers are stored as they are sent.
      JsonNode advice =
          json.readTree(json.writeValueAsBytes(answer.goingOnFrom(null, answer.read())));
      return Fitted.of(request.path("text").textValue(), answer, advice);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /**
   * The advice as it was given; empty if an older version wrote it in a form this one cannot read.
   */
  public Optional<Answer> asGiven(Fitted fitted) {
    try {
      Answer advice = json.treeToValue(fitted.advice(), Answer.class);
      return Optional.of(advice.goingOnFrom(fitted.request(), advice.read()));
    } catch (JsonProcessingException otherwise) {
      return Optional.empty();
    }
  }
}
