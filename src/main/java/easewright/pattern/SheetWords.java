package easewright.pattern;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.wording.Blanks;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;

/** The sentences for faults in a sheet: {@code faults.yaml}, beside the schema of sheets. */
final class SheetWords {
  private static final String RESOURCE = "/easewright/patterns/faults.yaml";

  /** Only strangers' sheets have faults, so reading the sentences waits for the first. */
  private static final class OnDemand {
    private static final Map<String, Words> ALL = read();
  }

  /**
   * The sentences of one entry.
   *
   * @param problem null where a part of the sheet refuses itself and has a sentence of its own
   * @param remedy null of such a part
   */
  private record Words(String problem, String remedy) {}

  private SheetWords() {}

  private static Map<String, Words> read() {
    try (InputStream yaml = SheetWords.class.getResourceAsStream(RESOURCE)) {
      return YAMLMapper.builder().build().readValue(yaml, new TypeReference<>() {});
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  static String problem(String key, Blanks blanks) {
    return blanks.fill(words(key).problem());
  }

  static String remedy(String key, Blanks blanks) {
    return blanks.fill(words(key).remedy());
  }

  private static Words words(String key) {
    Words words = OnDemand.ALL.get(key);
    if (words == null) {
      throw new IllegalStateException("faults.yaml has no entry " + key);
    }
    return words;
  }
}
