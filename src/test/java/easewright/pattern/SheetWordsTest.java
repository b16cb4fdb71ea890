package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.rulebook.RuleBookSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every sentence on a sheet that the code asks for is there, and no other. */
class SheetWordsTest {
  private static final Path MAIN = Path.of("src/main/java/easewright");
  private static final Path WORDS = Path.of("src/main/resources/easewright/patterns/faults.yaml");
  private static final Pattern KEBAB = Pattern.compile("\"([a-z]+(?:-[a-z]+)*)\"");
  private static final Pattern IMPOSSIBLE = Pattern.compile("new ImpossibleCloth\\(\"([a-z-]+)\"");

  private static String sources(String folder) throws IOException {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.list(MAIN.resolve(folder))) {
      for (Path file : files.sorted().toList()) {
        all.append(Files.readString(file));
      }
    }
    return all.toString();
  }

  private static Set<String> keys() throws IOException {
    Set<String> keys = new TreeSet<>();
    new YAMLMapper().readTree(WORDS.toFile()).fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  @Test
  void every_entry_is_asked_for() throws IOException {
    Set<String> unused = keys();
    Matcher named = KEBAB.matcher(sources("pattern"));
    while (named.find()) {
      unused.remove(named.group(1));
    }
    Matcher impossible = IMPOSSIBLE.matcher(sources("cloth"));
    while (impossible.find()) {
      unused.remove("cloth-" + impossible.group(1));
    }
    assertEquals(Set.of(), unused);
  }

  @Test
  void every_fault_that_is_added_has_its_sentences() throws IOException {
    JsonNode words = new YAMLMapper().readTree(WORDS.toFile());
    List<String> missing = new ArrayList<>();
    look(
        "(?:\\bmade\\([^;]*?,|SheetWords\\.remedy\\()\\s*\"([a-z-]+)\"\\s*[,)]", "remedy", missing);
    look("\\bnew SheetRefusal\\(\\s*\"([a-z-]+)\"", "problem", missing);
    for (String part : List.of("problem", "remedy")) {
      look("\\bfault\\(\\s*(?:node\\(side\\), [^,]*, )?\"([a-z-]+)\"", part, missing);
      look("\\bfault\\(\\s*[^;\"]*\\? \"([a-z-]+)\"", part, missing);
      look("\\bfault\\(\\s*[^;\"]*\\? \"[a-z-]+\" : \"([a-z-]+)\"", part, missing);
    }
    assertEquals(List.of(), missing);
    assertTrue(words.size() > 60, "Only " + words.size());
  }

  private static void look(String expression, String part, List<String> missing)
      throws IOException {
    JsonNode words = new YAMLMapper().readTree(WORDS.toFile());
    Matcher named = Pattern.compile(expression).matcher(sources("pattern"));
    int found = 0;
    while (named.find()) {
      found++;
      if (words.path(named.group(1)).path(part).asText().isEmpty()) {
        missing.add(named.group(1) + " has no " + part);
      }
    }
    assertTrue(found > 0, expression);
  }

  /** Readings are worded by the rule book, needs of a sheet by the sheet's own sentences. */
  @Test
  void every_impossible_cloth_has_a_sentence() throws IOException {
    Set<String> sentences = RuleBookSource.read(Path.of("rules")).wording().sentences().keySet();
    Set<String> keys = keys();
    Matcher impossible = IMPOSSIBLE.matcher(sources("cloth"));
    List<String> missing = new ArrayList<>();
    while (impossible.find()) {
      String key = impossible.group(1);
      if (!sentences.contains("impossible-" + key) && !keys.contains("cloth-" + key)) {
        missing.add(key);
      }
    }
    assertEquals(List.of(), missing);
    assertDoesNotThrow(() -> SheetWords.problem("box-of-zero", easewright.wording.Blanks.NONE));
  }
}
