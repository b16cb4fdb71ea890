package easewright.clinic;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Countable observations of a round, besides its gist.
 *
 * @param signs ids of the signs reported present
 * @param choices the option taken of each choice of the pattern, by the choice's id
 * @param cloth the stretch class of the main cloth as tested, or null
 */
record Seen(List<String> signs, Map<String, String> choices, String cloth) {
  static final Seen NOTHING = new Seen(List.of(), Map.of(), null);

  /** Ids contain neither. */
  private static final String BETWEEN = " ";

  private static final String TAKEN = "=";

  Seen {
    signs = List.copyOf(signs);
    choices = Map.copyOf(choices);
  }

  /** Extracts it from a fitting and its answer. */
  static Seen in(Fitted fitted) {
    List<String> signs = new ArrayList<>();
    for (JsonNode sign : fitted.advice().at("/understood/signs")) {
      if (sign.path("present").booleanValue()) {
        signs.add(sign.path("id").textValue());
      }
    }
    Map<String, String> choices = new LinkedHashMap<>();
    fitted
        .request()
        .path("choices")
        .properties()
        .forEach(choice -> choices.put(choice.getKey(), choice.getValue().textValue()));
    String cloth = null;
    for (JsonNode tested : fitted.advice().path("cloth")) {
      if ("main".equals(tested.path("role").textValue())) {
        cloth = tested.path("handbookClass").textValue();
      }
    }
    return new Seen(signs, choices, cloth);
  }

  String signsInRow() {
    return String.join(BETWEEN, signs);
  }

  String choicesInRow() {
    return choices.entrySet().stream()
        .map(choice -> choice.getKey() + TAKEN + choice.getValue())
        .sorted()
        .collect(Collectors.joining(BETWEEN));
  }

  /** Reads it from a row; all may be null there. */
  static Seen ofRow(String signs, String choices, String cloth) {
    return new Seen(
        words(signs),
        words(choices).stream()
            .map(choice -> choice.split(TAKEN, 2))
            .collect(Collectors.toMap(choice -> choice[0], choice -> choice[1])),
        cloth);
  }

  private static List<String> words(String row) {
    return row == null || row.isEmpty() ? List.of() : Arrays.asList(row.split(BETWEEN));
  }
}
