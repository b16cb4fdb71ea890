package easewright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The contract's examples and their recorded answers, as files. */
public final class Examples {
  private static final Path FOLDER = Path.of("openapi/examples");
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private Examples() {}

  /**
   * An example request in the contract.
   *
   * @param form its media type
   * @param file its file name
   * @param schema its schema in the contract
   * @param status the response status the contract lists it under
   * @param answerSchema the schema of that response
   * @param answerForms the media types the contract offers for that status
   */
  public record Example(
      String path,
      String name,
      String form,
      String file,
      String schema,
      int status,
      String answerSchema,
      List<String> answerForms) {

    public String request() throws IOException {
      return Files.readString(FOLDER.resolve(file));
    }

    @Override
    public String toString() {
      return path + " " + name;
    }
  }

  public static List<Example> all() {
    return all(ContractSchemas.CONTRACT);
  }

  /** The same for another contract; their requests are read from its own folder. */
  static List<Example> all(JsonNode contract) {
    List<Example> all = new ArrayList<>();
    for (Map.Entry<String, JsonNode> path : contract.path("paths").properties()) {
      if (isOfClinics(path.getKey())) {
        continue; // they need a key and their answers contain random ids: see ClinicRolesTest
      }
      JsonNode post = path.getValue().path("post");
      for (Map.Entry<String, JsonNode> form : post.at("/requestBody/content").properties()) {
        for (Map.Entry<String, JsonNode> shown : form.getValue().path("examples").properties()) {
          // Bulk requests have a different response: ContractTest checks them separately.
          if (!form.getKey().equals(BulkRoute.FORM)) {
            all.add(example(path.getKey(), post, form, shown));
          }
        }
      }
    }
    return all;
  }

  static boolean isOfClinics(String path) {
    return path.startsWith("/v1/clinics") || path.startsWith("/v1/wearer-links");
  }

  /** The example requests for some paths, as JSON. */
  public static List<JsonNode> requests(String... paths) throws IOException {
    List<JsonNode> requests = new ArrayList<>();
    for (Example example : all()) {
      if (List.of(paths).contains(example.path()) && example.file().endsWith(".json")) {
        requests.add(JSON.readTree(example.request()));
      }
    }
    return requests;
  }

  private static Example example(
      String path,
      JsonNode post,
      Map.Entry<String, JsonNode> form,
      Map.Entry<String, JsonNode> shown) {
    for (Map.Entry<String, JsonNode> response : post.path("responses").properties()) {
      JsonNode content = response.getValue().path("content");
      for (JsonNode answer : content) {
        if (answer.path("examples").has(shown.getKey())) {
          List<String> answerForms = new ArrayList<>();
          content.fieldNames().forEachRemaining(answerForms::add);
          answerForms.remove(BulkRoute.FORM);
          return new Example(
              path,
              shown.getKey(),
              form.getKey(),
              shown.getValue().path("externalValue").textValue().replace("examples/", ""),
              schema(form.getValue()),
              Integer.parseInt(response.getKey()),
              schema(answer),
              answerForms);
        }
      }
    }
    throw new AssertionError("The contract shows no answer to the example " + shown.getKey());
  }

  private static String schema(JsonNode media) {
    return media.at("/schema/$ref").textValue().replace("#/components/schemas/", "");
  }

  /** The recorded answer; with -Deasewright.record=true records this one first. */
  static JsonNode answer(String name, JsonNode now) throws IOException {
    Path file = FOLDER.resolve(name + ".answer.json");
    if (Boolean.getBoolean("easewright.record")) {
      Files.writeString(file, JSON.writeValueAsString(withoutHash(now)) + "\n");
    }
    return JSON.readTree(file.toFile());
  }

  /**
   * Fails unless an answer matches the recorded one; an answer to a fitting may differ in what
   * {@link AnswerInShort} omits.
   */
  static void assertAlike(String name, JsonNode now) throws IOException {
    assertAlike(answer(name, now), withoutHash(now), name);
  }

  static void assertAlike(JsonNode recorded, JsonNode now, String name) {
    if (recorded.has("causes") && now.has("causes")) {
      assertEquals(
          List.of(),
          AnswerInShort.differences(AnswerInShort.of(recorded), AnswerInShort.of(now)),
          name);
      assertEquals(recorded.path("soFar"), now.path("soFar"), name);
    } else {
      assertEquals(recorded, now, name);
    }
  }

  /** A bulk request. */
  static String lines(String name) throws IOException {
    return Files.readString(FOLDER.resolve(name + ".ndjson"));
  }

  /** Its recorded answers, recorded in the same way. */
  static List<JsonNode> answers(String name, List<JsonNode> now) throws IOException {
    Path file = FOLDER.resolve(name + ".answer.ndjson");
    if (Boolean.getBoolean("easewright.record")) {
      Files.write(file, now.stream().map(JsonNode::toString).toList());
    }
    List<JsonNode> recorded = new ArrayList<>();
    for (String line : Files.readAllLines(file)) {
      recorded.add(JSON.readTree(line));
    }
    return recorded;
  }

  /** Any edit of a rule changes the hash; only the answers are compared. */
  static JsonNode withoutHash(JsonNode answer) {
    JsonNode copy = answer.deepCopy();
    if (copy.path("ruleBook") instanceof ObjectNode stamp) {
      stamp.put("hash", "sha256:…");
    }
    return copy;
  }
}
