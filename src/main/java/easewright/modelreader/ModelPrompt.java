package easewright.modelreader;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.wording.Blanks;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What a model is told, and what it may answer: the names of one rule book, and the schema of an
 * answer. The post goes as a value in JSON, so that nothing in it can end the data and begin an
 * instruction. Immutable.
 */
public final class ModelPrompt {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String NAMES = "/properties/%s/items/properties/%s/enum";

  private final Map<String, String> signs;
  private final Map<String, String> lengths;
  private final Map<String, String> circumstances;
  private final String instructions;
  private final ObjectNode schema;

  /**
   * For the names of a rule book.
   *
   * @param signs name by id
   * @param lengths words for each body measurement by its wire name
   * @param circumstances name by id
   */
  public ModelPrompt(
      Map<String, String> signs, Map<String, String> lengths, Map<String, String> circumstances) {
    this.signs = Map.copyOf(signs);
    this.lengths = Map.copyOf(lengths);
    this.circumstances = Map.copyOf(circumstances);
    this.instructions =
        Blanks.of("signs", list(signs))
            .and("lengths", list(lengths))
            .and("circumstances", list(circumstances))
            .fill(new String(resource("instructions.txt"), StandardCharsets.UTF_8));
    try {
      this.schema = (ObjectNode) JSON.readTree(resource("reading.schema.json"));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    allow("signs", "sign", signs);
    allow("body", "name", lengths);
    allow("circumstances", "circumstance", circumstances);
  }

  boolean knowsSign(String id) {
    return signs.containsKey(id);
  }

  boolean knowsLength(String name) {
    return lengths.containsKey(name);
  }

  boolean knowsCircumstance(String id) {
    return circumstances.containsKey(id);
  }

  /**
   * A request for one reading.
   *
   * @param model the name of the model
   * @param asked the question that the post replies to, or null
   */
  byte[] request(String model, String post, String asked) throws IOException {
    ObjectNode data = JSON.createObjectNode();
    if (asked != null) {
      data.put("question", asked);
    }
    data.put("post", post);
    ObjectNode request = JSON.createObjectNode().put("model", model);
    ArrayNode messages = request.putArray("messages");
    messages.addObject().put("role", "system").put("content", instructions);
    messages.addObject().put("role", "user").put("content", JSON.writeValueAsString(data));
    request.put("temperature", 0).put("stream", false);
    ObjectNode format = request.putObject("response_format").put("type", "json_schema");
    format
        .putObject("json_schema")
        .put("name", "reading")
        .put("strict", true)
        .set("schema", schema);
    return JSON.writeValueAsBytes(request);
  }

  private void allow(String list, String field, Map<String, String> names) {
    ArrayNode allowed = (ArrayNode) schema.at(NAMES.formatted(list, field));
    names.keySet().stream().sorted().forEach(allowed::add);
  }

  private static String list(Map<String, String> names) {
    return names.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(one -> one.getKey() + ": " + one.getValue())
        .collect(Collectors.joining("\n"));
  }

  private static byte[] resource(String name) {
    try (InputStream file =
        ModelPrompt.class.getResourceAsStream("/easewright/modelreader/" + name)) {
      return file.readAllBytes();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
