package easewright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.answering.FittingService;
import easewright.diagnosis.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Readings of a post that a person struck where they stand: the signs no longer count. A danger
 * stays, whoever strikes it.
 */
final class StruckReadings {
  /** The signs struck so far; several hidden fields, and what a request calls them. */
  static final String STRUCK = "struck";

  /** A pressed button; its value is a sign. */
  private static final String STRIKE = "strike";

  private static final String PUT_BACK = "putBack";

  private StruckReadings() {}

  /** The form with the pressed button's sign struck, or put back. */
  static FilledForm taken(FilledForm form) {
    List<String> struck = new ArrayList<>(form.values(STRUCK));
    struck.addAll(form.values(STRIKE));
    struck.removeAll(form.values(PUT_BACK));
    return form.with(Map.of(STRUCK, struck.stream().distinct().toList()));
  }

  /**
   * The answer without what was struck.
   *
   * @param request what was answered
   * @param first the answer to all that was read
   * @param dangers ids of the signs that nobody can strike
   */
  static Answer without(
      FilledForm form,
      ObjectNode request,
      Answer first,
      FittingService fittings,
      Set<String> dangers) {
    List<String> ticked = Conversation.reportedSigns(form);
    Set<String> struck =
        Set.copyOf(
            form.values(STRUCK).stream()
                .filter(sign -> !dangers.contains(sign) && !ticked.contains(sign))
                .toList());
    if (struck.isEmpty() || first.read() == null) {
      return first;
    }
    ObjectNode without = request.deepCopy();
    ArrayNode places = without.putArray(STRUCK);
    for (JsonNode span : first.read().path("spans")) {
      String sign = first.soFar().at(span.path("pointer").asText()).path("sign").asText();
      if (struck.contains(sign)) {
        ObjectNode place = places.addObject().put("id", sign);
        place.put("from", span.path("from").asInt()).put("to", span.path("to").asInt());
      }
    }
    Answer answered = fittings.answer(without);
    return answered.goingOnFrom(answered.soFar(), first.read());
  }
}
