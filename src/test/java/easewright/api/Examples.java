package easewright.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The contract's examples and their recorded answers, as files. */
final class Examples {
  private static final Path FOLDER = Path.of("openapi/examples");
  private static final List<String> OTHERS = List.of("size-check-", "cloth-check-", "cut-plan-");
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private Examples() {}

  /** Fittings; the other operations' examples begin with their name. */
  static List<String> names() throws IOException {
    return all().stream().filter(name -> OTHERS.stream().noneMatch(name::startsWith)).toList();
  }

  /** Examples of one other operation. */
  static List<String> names(String operation) throws IOException {
    return all().stream().filter(name -> name.startsWith(operation)).toList();
  }

  private static List<String> all() throws IOException {
    List<String> names = new ArrayList<>();
    try (var files = Files.newDirectoryStream(FOLDER, "*.json")) {
      for (Path file : files) {
        String name = file.getFileName().toString().replace(".json", "");
        if (!name.endsWith(".answer")) {
          names.add(name);
        }
      }
    }
    return names.stream().sorted().toList();
  }

  static JsonNode request(String name) throws IOException {
    return JSON.readTree(FOLDER.resolve(name + ".json").toFile());
  }

  /** The recorded answer; first records this one when run with -Deasewright.record=true. */
  static JsonNode answer(String name, JsonNode now) throws IOException {
    Path file = FOLDER.resolve(name + ".answer.json");
    if (Boolean.getBoolean("easewright.record")) {
      Files.writeString(file, JSON.writeValueAsString(withoutHash(now)) + "\n");
    }
    return JSON.readTree(file.toFile());
  }

  /** Any edit of any rule changes the hash; the answers they give are what is compared. */
  static JsonNode withoutHash(JsonNode answer) {
    JsonNode copy = answer.deepCopy();
    if (copy.path("ruleBook") instanceof ObjectNode stamp) {
      stamp.put("hash", "sha256:…");
    }
    return copy;
  }
}
