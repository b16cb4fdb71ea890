package easewright.modelreader;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.modelreader.ModelReading.CircumstanceSaid;
import easewright.modelreader.ModelReading.LengthSaid;
import easewright.modelreader.ModelReading.SignSaid;
import easewright.modelreader.Quotes.Place;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Takes from a model's answer what holds, and counts what does not. */
final class ModelAnswer {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** More of one kind than any post can say: the rest is left out. */
  private static final int MOST_ITEMS = 60;

  private final ModelPrompt prompt;
  private final Quotes quotes;
  private int dropped;

  /**
   * What an answer holds.
   *
   * @param dropped how many items named something unknown or quoted what the post does not say
   */
  record Kept(ModelReading reading, int dropped) {}

  private ModelAnswer(ModelPrompt prompt, String post) {
    this.prompt = prompt;
    this.quotes = new Quotes(post);
  }

  /**
   * What holds of an answer.
   *
   * @param body the response of a chat completion
   * @return nothing where it has another form
   */
  static Optional<Kept> read(byte[] body, String post, ModelPrompt prompt) {
    JsonNode said;
    try {
      String content =
          JSON.readTree(body).at("/choices/0/message/content").asText(""); // never null
      said = JSON.readTree(object(content));
    } catch (IOException garbled) {
      return Optional.empty();
    }
    if (!said.path("signs").isArray()
        || !said.path("body").isArray()
        || !said.path("circumstances").isArray()) {
      return Optional.empty();
    }
    return Optional.of(new ModelAnswer(prompt, post).kept(said));
  }

  /** Models without a schema often put their JSON between marks of code. */
  private static String object(String content) {
    int from = content.indexOf('{');
    int to = content.lastIndexOf('}');
    return from < 0 || to < from ? "" : content.substring(from, to + 1);
  }

  private Kept kept(JsonNode said) {
    List<SignSaid> signs = new ArrayList<>();
    for (JsonNode one : items(said.path("signs"))) {
      String seen = one.path("seen").asText();
      boolean known = seen.equals("present") || seen.equals("absent");
      place(one, "sign", id -> known && prompt.knowsSign(id))
          .ifPresent(
              at ->
                  signs.add(
                      new SignSaid(
                          one.path("sign").textValue(),
                          seen.equals("present"),
                          at.from(),
                          at.to())));
    }
    List<LengthSaid> lengths = new ArrayList<>();
    for (JsonNode one : items(said.path("body"))) {
      place(one, "name", prompt::knowsLength)
          .ifPresent(
              at ->
                  lengths.add(
                      new LengthSaid(
                          one.path("name").textValue(),
                          one.path("value").asText(),
                          at.from(),
                          at.to())));
    }
    List<CircumstanceSaid> circumstances = new ArrayList<>();
    for (JsonNode one : items(said.path("circumstances"))) {
      place(one, "circumstance", prompt::knowsCircumstance)
          .ifPresent(
              at ->
                  circumstances.add(
                      new CircumstanceSaid(
                          one.path("circumstance").textValue(), at.from(), at.to())));
    }
    return new Kept(new ModelReading(signs, lengths, circumstances), dropped);
  }

  private List<JsonNode> items(JsonNode list) {
    List<JsonNode> some = new ArrayList<>();
    for (JsonNode one : list) {
      if (some.size() < MOST_ITEMS) {
        some.add(one);
      } else {
        dropped++;
      }
    }
    return some;
  }

  private Optional<Place> place(JsonNode item, String field, Predicate<String> isKnown) {
    JsonNode id = item.path(field);
    Optional<Place> place =
        id.isTextual() && isKnown.test(id.textValue())
            ? quotes.find(item.path("quote").asText())
            : Optional.empty();
    if (place.isEmpty()) {
      dropped++;
    }
    return place;
  }
}
