package easewright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One page has every option: those the code reads, and those the files for installing set. */
class OptionsPageTest {
  private static final Path PAGE = Path.of("src/packaging/running.md");

  /** Names in the code that are no options: prefixes, meters, topics, a package. */
  private static final Set<String> NO_OPTIONS =
      Set.of(
          "easewright.answers",
          "easewright.batch",
          "easewright.engine",
          "easewright.fittings",
          "easewright.mcp.message",
          "easewright.model.dropped",
          "easewright.model.readings",
          "easewright.rules.fired",
          "easewright.rules.sportsbra",
          "easewright.set-aside");

  /** The options named in code spans; ".b" after "a.c" is "a.b". */
  private static Set<String> onThePage() throws IOException {
    Set<String> options = new TreeSet<>();
    String before = "";
    for (MatchResult span :
        all("`-?D?((?:easewright|quarkus)?\\.[a-z.-]+|EASEWRIGHT_JVM)", Files.readString(PAGE))) {
      String name = span.group(1);
      String whole =
          name.startsWith(".") ? before.substring(0, before.lastIndexOf('.')) + name : name;
      options.add(whole);
      before = whole;
    }
    return options;
  }

  private static List<MatchResult> all(String pattern, String text) {
    return Pattern.compile(pattern, Pattern.MULTILINE).matcher(text).results().toList();
  }

  @Test
  void every_option_the_code_reads_is_on_the_page() throws IOException {
    Set<String> read = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : (Iterable<Path>) files::iterator) {
        if (file.toString().endsWith(".java")) {
          for (MatchResult name : all("\"(easewright(?:\\.[a-z-]+)+)\"", Files.readString(file))) {
            read.add(name.group(1));
          }
        }
      }
    }
    assertTrue(read.size() > NO_OPTIONS.size(), read.toString());
    read.removeAll(NO_OPTIONS);
    read.removeAll(onThePage());
    assertEquals(Set.of(), read);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "debian/easewright.conf",
        "debian/easewright.service",
        "container/Containerfile",
        "container/compose.yaml"
      })
  void every_variable_that_is_set_is_an_option_of_the_page(String file) throws IOException {
    Set<String> known =
        onThePage().stream()
            .map(option -> option.toUpperCase(Locale.ROOT).replaceAll("[.-]", "_"))
            .collect(Collectors.toSet());
    Set<String> unknown = new TreeSet<>();
    List<MatchResult> set =
        all("\\b((?:EASEWRIGHT|QUARKUS)_[A-Z_]+)[=:]", Files.readString(PAGE.resolveSibling(file)));
    assertTrue(!set.isEmpty(), file);
    set.forEach(variable -> unknown.add(variable.group(1)));
    unknown.removeAll(known);
    assertEquals(Set.of(), unknown);
  }
}
