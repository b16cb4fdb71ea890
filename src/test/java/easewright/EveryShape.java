package easewright;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A fitting in every shape of the contract, and what an answer must say back of it. */
public final class EveryShape {
  private static final JsonNode FILE = file();

  private EveryShape() {}

  private static JsonNode file() {
    try (InputStream in = EveryShape.class.getResourceAsStream("/every-shape.yaml")) {
      return new YAMLMapper().readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The request, a copy. */
  public static ObjectNode request() {
    return FILE.path("request").deepCopy();
  }

  /** Fails with every part of the request that a Markdown answer does not say back. */
  public static void assertSaidIn(String answer) {
    String plain = answer.replace("\\", "").toLowerCase(Locale.ROOT);
    List<String> left = new ArrayList<>();
    for (JsonNode said : FILE.path("says")) {
      if (!plain.contains(said.asText().toLowerCase(Locale.ROOT))) {
        left.add(said.asText());
      }
    }
    assertEquals(List.of(), left, answer);
  }
}
