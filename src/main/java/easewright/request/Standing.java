package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.clinic.Rounds.Told;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What the rounds of a case reported about health that still applies. A danger applies until its
 * sign is reported absent, a circumstance until it is reported as false, and words that only a
 * person can judge until a helper has replied. Uses all rounds, since two may be added at the same
 * time.
 *
 * @param dangers ids of signs
 * @param circumstances fields and values of {@code circumstances}
 * @param unjudged words not yet judged by a person
 */
public record Standing(
    List<String> dangers, Map<String, JsonNode> circumstances, List<String> unjudged) {
  private static final String SIGNS = "signs";
  private static final String CIRCUMSTANCES = "circumstances";
  private static final String MONTHS = "monthsSinceOperation";

  /** Nothing reported so far. */
  public static final Standing NONE = new Standing(List.of(), Map.of(), List.of());

  /**
   * Collects what the rounds reported.
   *
   * @param rounds oldest first
   * @param dangers ids of the signs that are dangers
   */
  public static Standing after(List<Told> rounds, Set<String> dangers) {
    Map<String, Boolean> signs = new LinkedHashMap<>();
    Map<String, JsonNode> circumstances = new TreeMap<>();
    List<String> unjudged = List.of();
    for (Told round : rounds) {
      Map<String, Boolean> now = new LinkedHashMap<>();
      for (JsonNode sign : round.request().path(SIGNS)) {
        boolean present = !sign.path("seen").asText().equals("absent");
        now.merge(sign.path("sign").asText(), present, Boolean::logicalOr);
      }
      signs.putAll(now);
      round
          .request()
          .path(CIRCUMSTANCES)
          .properties()
          .forEach(one -> circumstances.put(one.getKey(), one.getValue()));
      unjudged = round.replied() ? List.of() : WordsToReview.in(round.request());
    }
    signs.keySet().retainAll(dangers);
    signs.values().removeIf(present -> !present);
    circumstances
        .entrySet()
        .removeIf(one -> !one.getValue().asBoolean() && !one.getKey().equals(MONTHS));
    circumstances.remove(CircumstancesReader.IMPACT); // depends on the purpose of the garment
    return new Standing(List.copyOf(signs.keySet()), circumstances, unjudged);
  }

  /** The same as fields of a request. */
  public ObjectNode asRequest() {
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    putInto(request, false);
    return request;
  }

  /**
   * Adds what still applies to a request, except where the request itself states it.
   *
   * @param judged whether the request itself says which words are still to be judged
   * @return the dangers added
   */
  public List<String> putInto(ObjectNode request, boolean judged) {
    List<String> put = new ArrayList<>();
    if (isListOrNone(request.path(SIGNS))) {
      List<String> sent = request.path(SIGNS).findValuesAsText("sign");
      for (String danger : dangers) {
        if (!sent.contains(danger)) {
          request.withArray(SIGNS).addObject().put("sign", danger).put("seen", "present");
          put.add(danger);
        }
      }
    }
    JsonNode sent = request.path(CIRCUMSTANCES);
    if (sent.isMissingNode() || sent.isObject()) {
      circumstances.forEach(
          (field, value) -> {
            if (!sent.has(field)) {
              request.withObject("/" + CIRCUMSTANCES).set(field, value);
            }
          });
    }
    if (!judged && !unjudged.isEmpty()) {
      Set<String> words = new LinkedHashSet<>(unjudged);
      words.addAll(WordsToReview.in(request)); // those of this round's text
      ArrayNode list = request.putArray(WordsToReview.FIELD);
      words.stream().limit(WordsToReview.MOST).forEach(list::add);
    }
    return put;
  }

  private static boolean isListOrNone(JsonNode node) {
    return node.isMissingNode() || node.isArray();
  }
}
