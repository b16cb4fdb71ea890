package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every kind of fault, caused by one small edit of a shipped sheet. Pointers follow RFC 6901 and
 * must exist; lines are counted here from the text itself.
 */
class BrokenSheetsTest {

  private static final PatternSheets SHEETS = new PatternSheets();

  record Broken(
      String name,
      String sheet,
      String find,
      String put,
      String pointer,
      String line,
      String says) {

    @Override
    public String toString() {
      return name;
    }

    String text() throws IOException {
      String shipped = resource("/easewright/patterns/" + sheet + ".yaml");
      assertEquals(
          shipped.indexOf(find), shipped.lastIndexOf(find), () -> name + ": found more than once");
      assertTrue(shipped.contains(find), () -> name + ": not found");
      return shipped.replace(find, put);
    }
  }

  static List<Broken> sheets() throws IOException {
    return new YAMLMapper()
        .readValue(resource("/broken-sheets.yaml"), new TypeReference<List<Broken>>() {});
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void a_broken_sheet_is_faulted_at_its_place_and_line(Broken broken) throws IOException {
    String text = broken.text();
    List<SheetFault> faults = assertThrows(SheetFaults.class, () -> SHEETS.readYaml(text)).faults();
    List<String> lines = text.lines().toList();
    assertTrue(
        faults.stream()
            .anyMatch(
                fault ->
                    fault.pointer().equals(broken.pointer())
                        && fault.problem().contains(broken.says())
                        && lines.get(fault.line().orElseThrow() - 1).contains(broken.line())),
        faults::toString);
    for (SheetFault fault : faults) {
      assertFalse(fault.problem().isBlank() || fault.remedy().isBlank(), fault::toString);
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void every_fault_leads_to_a_place_in_the_sheet(Broken broken) throws IOException {
    SheetFaults found = assertThrows(SheetFaults.class, () -> SHEETS.readYaml(broken.text()));
    if (found.readable()) {
      JsonNode json = new YAMLMapper().readTree(broken.text());
      for (SheetFault fault : found.faults()) {
        assertFalse(json.at(JsonPointer.compile(fault.pointer())).isMissingNode(), fault::pointer);
      }
    }
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = BrokenSheetsTest.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
