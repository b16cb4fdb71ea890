package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Words of earlier messages that may report a danger and that only a person can judge. */
public final class WordsToReview {
  /** The request field that holds them. */
  public static final String FIELD = "readYourself";

  static final int MOST = 20;

  private WordsToReview() {}

  static List<String> in(JsonNode request) {
    List<String> words = new ArrayList<>();
    request.path(FIELD).forEach(one -> words.add(one.asText()));
    return words;
  }

  /**
   * A request with its text read and the text's words added.
   *
   * @param text what was read, or null without a text
   * @return a copy
   */
  public static JsonNode with(JsonNode request, IntakeAnswer text) {
    JsonNode whole = (text == null ? request : text.fitting()).deepCopy();
    if (text != null && !text.readYourself().isEmpty() && isListOrNone(whole.path(FIELD))) {
      Set<String> words = new LinkedHashSet<>(in(whole));
      text.readYourself().forEach(one -> words.add(one.text()));
      ArrayNode list = ((ObjectNode) whole).putArray(FIELD);
      words.stream().limit(MOST).forEach(list::add);
    }
    return whole;
  }

  private static boolean isListOrNone(JsonNode node) {
    return node.isMissingNode() || node.isArray();
  }

  static void check(RequestField list) {
    for (RequestField spot : list.items(MOST)) {
      JsonNode node = spot.node();
      if (!node.isTextual()
          || node.textValue().isBlank()
          || node.textValue().length() > TextReader.MOST_CHARACTERS
          || node.textValue().indexOf(TextReader.NUL) >= 0) {
        spot.unreadable(
            "Words of a message are needed here.",
            "Send readYourself as the answer's soFar gave it, or leave it out once it is judged.");
      }
    }
  }
}
