package easewright.intake;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * A line of a post by a hand that never saw the project.
 *
 * @param danger sign id it tells of, or null
 * @param circumstance circumstance id it tells of, or null
 */
record DangerPost(String danger, String circumstance, String text) {
  /** The catalog already had a sign for it, under another name. */
  DangerPost {
    danger =
        "new-difference-between-the-sides".equals(danger)
            ? "difference-between-the-sides-is-new"
            : danger;
  }

  /**
   * What one hand wrote.
   *
   * @param posts lines that tell of a danger or a circumstance
   * @param harmless lines that only sound like it
   */
  record Hand(List<DangerPost> posts, List<DangerPost> harmless) {}

  static List<Hand> in(String folder) {
    YAMLMapper yaml =
        YAMLMapper.builder().disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES).build();
    try (Stream<Path> files = Files.list(Path.of("src/test/resources", folder))) {
      return files
          .sorted()
          .map(
              file -> {
                try {
                  return yaml.readValue(file.toFile(), Hand.class);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              })
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
