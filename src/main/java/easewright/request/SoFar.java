package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The request to continue from: what was read, with defaults made explicit and without the original
 * text. Sent again it gives the same answer, so a conversation needs no store.
 */
public final class SoFar {
  /** Pattern fields are copied verbatim, since their names may look like quantities. */
  private static final Set<String> AS_SENT =
      Set.of(
          FamilyNames.FIELD,
          "pattern",
          "sizeCut",
          "choices",
          "nickname",
          "opening",
          "closing",
          WordsToReview.FIELD);

  private static final Set<String> SAID_ONCE = Set.of("text", "asked", "units", Struck.FIELD);

  private SoFar() {}

  /** The same without the sheet that was sent along, which is named instead. */
  public static JsonNode lean(JsonNode soFar) {
    return soFar == null ? null : PatternReader.withoutSheet(soFar);
  }

  /**
   * Builds it.
   *
   * @param request the JSON the fitting was read from
   */
  public static ObjectNode of(JsonNode request, Fitting fitting) {
    ObjectNode soFar = JsonNodeFactory.instance.objectNode();
    soFar.put("units", fitting.units().name().toLowerCase(Locale.ROOT));
    for (Map.Entry<String, JsonNode> field : request.properties()) {
      if (!SAID_ONCE.contains(field.getKey())) {
        soFar.set(
            field.getKey(),
            AS_SENT.contains(field.getKey()) ? field.getValue() : written(field.getValue()));
      }
    }
    for (JsonNode sign : soFar.path("signs")) {
      if (!sign.has("seen")) {
        ((ObjectNode) sign).put("seen", "present");
      }
    }
    omitReported(soFar, fitting);
    if (soFar.path(WordsToReview.FIELD).isEmpty()) {
      soFar.remove(WordsToReview.FIELD);
    }
    return soFar;
  }

  /** Removes from the "cannot be told" list what has since been reported. */
  private static void omitReported(ObjectNode soFar, Fitting fitting) {
    Set<String> reported =
        fitting.signs().stream().map(ReportedSign::id).collect(Collectors.toUnmodifiableSet());
    soFar.remove("couldNotTell");
    fitting.couldNotTell().stream()
        .filter(sign -> !reported.contains(sign))
        .forEach(sign -> soFar.withArray("couldNotTell").add(sign));
  }

  private static JsonNode written(JsonNode node) {
    if (node.isTextual()) {
      return TextNode.valueOf(written(node.textValue()));
    }
    if (node.isObject()) {
      ObjectNode object = JsonNodeFactory.instance.objectNode();
      node.properties().forEach(field -> object.set(field.getKey(), written(field.getValue())));
      return object;
    }
    if (node.isArray()) {
      ArrayNode array = JsonNodeFactory.instance.arrayNode();
      node.forEach(item -> array.add(written(item)));
      return array;
    }
    return node;
  }

  private static String written(String text) {
    if (!holdsNumber(text)) {
      return text; // most texts are names, and trying to parse each as a quantity costs more
    }
    try {
      Quantity quantity = Quantity.parse(text);
      String plain = quantity.text();
      return !plain.equals(text) && Quantity.parse(plain).equals(quantity) ? plain : text;
    } catch (BadQuantity name) {
      return text;
    }
  }

  /** A digit, or a sign such as "½". */
  private static boolean holdsNumber(String text) {
    for (int i = 0; i < text.length(); i++) {
      int type = Character.getType(text.charAt(i));
      if (type == Character.DECIMAL_DIGIT_NUMBER || type == Character.OTHER_NUMBER) {
        return true;
      }
    }
    return false;
  }
}
