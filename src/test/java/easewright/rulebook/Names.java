package easewright.rulebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What uses parameters besides rules. */
final class Names {
  /** Parameters that words of the catalog and the rules stand for. */
  static final List<String> WORDS = List.of("without-fault-", "trust-", "ask-", "effort-");

  static final Set<String> BARE_WORDS =
      Set.of(
          "nearly-always",
          "usually",
          "often",
          "sometimes",
          "rarely",
          "never",
          "fully",
          "largely",
          "partly",
          "common",
          "fairly-common",
          "uncommon",
          "rare",
          "very-rare");

  static final String JAVA_SOURCES = javaSources();

  private Names() {}

  private static String javaSources() {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/easewright"))) {
      StringBuilder all = new StringBuilder();
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        all.append(Files.readString(file));
      }
      return all.toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
