package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import easewright.number.WordLists;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Everyday words stand in {@code rules/everyday}, where a teacher can edit them. */
class WordsInCodeTest {
  /** A list of four words or more; shorter ones name cues, degrees, sides and outcomes. */
  private static final Pattern WORD_LIST =
      Pattern.compile("(?:Set|List|Map)\\s*\\.of\\(\\s*(?:\"[a-z' ]+\",?\\s*){4,}");

  /** Names of cues, not words. */
  private static final String CUES = "\"no\", \"might\", \"past\", \"hardly\", \"elsewhere\"";

  @Test
  void no_list_of_everyday_words_stands_in_the_code() throws IOException {
    List<String> found = new ArrayList<>();
    Path code = Path.of("src/main/java/easewright");
    try (Stream<Path> files =
        Stream.concat(Files.list(code.resolve("intake")), Files.list(code.resolve("number")))) {
      for (Path file : files.sorted().toList()) {
        Matcher list = WORD_LIST.matcher(Files.readString(file));
        while (list.find()) {
          if (!list.group().contains(CUES)) {
            found.add(file.getFileName() + ": " + list.group());
          }
        }
      }
    }
    assertEquals(List.of(), found);
  }

  @Test
  void a_list_that_is_missing_or_malformed_is_named() {
    WordLists lists = new WordLists(Map.of("kept", List.of("linings lining")));
    assertThrows(IllegalArgumentException.class, () -> lists.has("turns", "but"));
    assertThrows(IllegalArgumentException.class, () -> lists.pairs("kept"));
  }
}
