package easewright.contract;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Text resources of the application. */
public final class BundledText {
  private BundledText() {}

  /** The text at a path below {@code easewright/}. */
  public static String text(String path) {
    return find(path)
        .orElseThrow(() -> new IllegalStateException("The file " + path + " is not shipped."));
  }

  static Optional<String> find(String path) {
    try (InputStream stream = BundledText.class.getResourceAsStream("/easewright/" + path)) {
      return stream == null
          ? Optional.empty()
          : Optional.of(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
