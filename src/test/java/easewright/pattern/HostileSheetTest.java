package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * An uploaded sheet is only data: a malicious one is rejected with a fault that names no class, at
 * a cost linear in its length. The dangerous YAML features are anchors, aliases and tags of the
 * YAML 1.2.2 specification (chapter 3.2) and merge keys (YAML 1.1, "Merge Key" type).
 */
class HostileSheetTest {
  private static final int MOST_CHARACTERS = 256 * 1024;
  private static final Pattern CLASS =
      Pattern.compile("jackson|java|\\b(?:\\w+\\.){2,}|\\w+(?:Event|Token|Exception)\\b");
  private final PatternSheets sheets = new PatternSheets();

  private static String small() {
    try {
      return Files.readString(Path.of("openapi/examples/small-sheet.yaml"));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private List<SheetFault> refused(String yaml) {
    SheetFaults refusal = assertThrows(SheetFaults.class, () -> sheets.readYaml(yaml));
    for (SheetFault fault : refusal.faults()) {
      String said = fault.problem() + fault.remedy();
      assertFalse(CLASS.matcher(said).find() || said.contains("`"), said);
      assertTrue(said.length() < 2_000, () -> "A fault of " + said.length() + " characters");
    }
    return refusal.faults();
  }

  @Test
  void a_billion_laughs_are_not_laughed() {
    String bomb =
        "a0: &a0 [lol, lol, lol, lol, lol, lol, lol, lol, lol]\n"
            + IntStream.rangeClosed(1, 60)
                .mapToObj(
                    i ->
                        "a%d: &a%d [%s]"
                            .formatted(
                                i,
                                i,
                                Stream.generate(() -> "*a" + (i - 1))
                                    .limit(9)
                                    .collect(Collectors.joining(","))))
                .collect(Collectors.joining("\n"));
    refused(bomb);
    refused(small() + "\n" + bomb);
  }

  /** YAML 1.2.2, section 7.4.2: a key may be of any kind, here only text. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "? {a: b}\n: c",
        "? - a",
        "? ? ? a",
        "? [a, b]\n: c",
        "{[a]: b}",
        "{{a: b}: c}",
        "a: b: c",
        "- a\nb: c",
        "\t- a",
        "%YAML 3.0\n---\na",
        "&a",
        "*a",
        "!<",
        "\"\\x",
        "a: \u0000",
        "---\n---\n",
        "}",
        "|2-3"
      })
  void what_is_no_sheet_of_names_and_values_is_refused_without_a_class(String yaml) {
    refused(yaml);
    refused(small() + "\n" + yaml);
  }

  @Test
  void an_alias_a_merge_key_and_a_tag_do_nothing() {
    refused(small().replace("name: Wickenfell top", "name: &n Wickenfell top\nsummary: *n"));
    assertTrue(
        refused(small() + "\nbase: &base {id: x}\n<<: *base\n").stream()
            .anyMatch(fault -> fault.pointer().equals("/<<")));
    refused(
        small().replace("family: sports-bra", "family: !!java.net.URL [\"http://127.0.0.1/\"]"));
    refused(small().replace("family: sports-bra", "family: !!javax.script.ScriptEngineManager {}"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1e999999999",
        "-1e999999999",
        "1e-999999999",
        "99999999999999999999999999999",
        "999999999999999999999999999999999999999999999",
        ".inf",
        "-.inf",
        ".nan",
        "0x7fffffffffffffffffff",
        "0o777777777777777777777777",
        "190:20:30.15",
        "1_000_000_000_000_000_000_000"
      })
  void a_number_beyond_all_measure_is_a_fault(String number) {
    refused(small().replaceFirst("notches: 1", "notches: " + number));
    refused(small().replace("schemaVersion: 1", "schemaVersion: " + number));
    refused(small().replace("seamAllowance: \"1 cm\"", "seamAllowance: \"" + number + " cm\""));
    String json = "{\"schemaVersion\": " + number + ", \"pieces\": [{\"count\": " + number + "}]}";
    assertThrows(SheetFaults.class, () -> sheets.readJson(json));
  }

  @Test
  void what_is_too_deep_or_too_long_is_refused_at_its_place() {
    assertTrue(refused("[".repeat(21) + "]".repeat(21)).get(0).problem().contains("deep"));
    refused("[".repeat(MOST_CHARACTERS / 2) + "]".repeat(MOST_CHARACTERS / 2));
    refused("- ".repeat(MOST_CHARACTERS / 2));
    refused("{a: ".repeat(MOST_CHARACTERS / 4));
    refused("id: " + "a-".repeat(MOST_CHARACTERS / 3) + "a");
    refused("id: " + "a".repeat(MOST_CHARACTERS - 10));
    refused("a".repeat(MOST_CHARACTERS - 10) + ": 1");
    refused("id: " + "9".repeat(MOST_CHARACTERS - 10));
    refused(small().replace("id: wickenfell-top", "id: " + "a-".repeat(1_900) + "a"));
  }

  @Test
  void a_second_document_is_not_passed_over() {
    refused(small() + "\n---\nid: another\n");
  }

  @Test
  void a_key_written_twice_is_refused() {
    refused(small() + "\nid: twice\n");
  }
}
