package easewright;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A test with a configuration of its own runs with the long ones, and with no other. */
class OwnStartTest {
  private static final Path TESTS = Path.of("src/test/java");

  @Test
  void the_list_holds_every_test_that_has_a_configuration_of_its_own() throws IOException {
    List<String> listed =
        Files.readAllLines(Path.of("src/test/own-start.txt")).stream()
            .filter(line -> !line.startsWith("#"))
            .toList();
    assertEquals(withProfile().map(file -> TESTS.relativize(file).toString()).toList(), listed);
  }

  @Test
  void each_of_them_is_run_with_the_long_ones() throws IOException {
    assertEquals(
        List.of(), withProfile().filter(file -> !text(file).contains("@Tag(\"long\")")).toList());
  }

  private static Stream<Path> withProfile() throws IOException {
    try (Stream<Path> files = Files.walk(TESTS)) {
      return files
          .filter(file -> file.toString().endsWith("Test.java"))
          .filter(file -> text(file).contains("\n@TestProfile("))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
