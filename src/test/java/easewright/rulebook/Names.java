package easewright.rulebook;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What uses parameters besides rules. */
final class Names {
  /** Parameters that words of the catalog and the rules stand for. */
  static final List<String> WORDS =
      List.of(
          "without-fault-",
          "trust-",
          "leak-share-",
          "ask-",
          "effort-",
          "sure-undo-",
          "sure-effort-",
          "elastic-share-");

  /** The words of the sentences on weighing and curing, and of the causes' priors. */
  static Set<String> bareWords(RuleBookSource book) {
    Set<String> words =
        Pattern.compile("book\\.(?:shows|cures)\\(drools, \"\\{\\w+}\", \"([a-z-]+)\"")
            .matcher(book.vocabulary())
            .results()
            .map(found -> found.group(1))
            .collect(Collectors.toCollection(TreeSet::new));
    priors().forEach(prior -> words.add(prior.replace(' ', '-')));
    return words;
  }

  /** The words for how common a cause is, as the schema of causes lists them. */
  private static List<String> priors() {
    try {
      List<String> priors = new ArrayList<>();
      new ObjectMapper()
          .readTree(Path.of("rules/schema/causes.schema.json").toFile())
          .at("/items/properties/prior/enum")
          .forEach(word -> priors.add(word.asText()));
      return priors;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

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
