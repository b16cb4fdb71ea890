package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class SheetFaultsTest {

  private static final PatternSheets SHEETS = new PatternSheets();

  private final ObjectNode sheet = shipped();

  private static ObjectNode shipped() {
    try {
      return (ObjectNode) new YAMLMapper().readTree(resource("quillmere-top.yaml"));
    } catch (IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }

  private static String resource(String name) throws IOException {
    try (InputStream in =
        SheetFaultsTest.class.getResourceAsStream("/easewright/patterns/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  // Locations are JSON Pointers (RFC 6901): each must exist in the sheet as given.
  private static List<SheetFault> faults(JsonNode sheet) {
    List<SheetFault> faults = assertThrows(SheetFaults.class, () -> SHEETS.read(sheet)).faults();
    for (SheetFault fault : faults) {
      assertFalse(sheet.at(JsonPointer.compile(fault.pointer())).isMissingNode(), fault::pointer);
      assertFalse(fault.problem().isBlank() || fault.remedy().isBlank(), fault::toString);
    }
    return faults;
  }

  private void assertFault(String pointer, String words) {
    List<SheetFault> faults = faults(sheet);
    assertTrue(
        faults.stream().anyMatch(f -> f.pointer().equals(pointer) && f.problem().contains(words)),
        () -> "no '" + words + "' at " + pointer + " in " + faults);
  }

  private void set(String pointer, String json) {
    try {
      JsonPointer at = JsonPointer.compile(pointer);
      JsonNode parent = sheet.at(at.head());
      JsonNode value = new YAMLMapper().readTree(json);
      if (parent instanceof ArrayNode array) {
        array.set(at.last().getMatchingIndex(), value);
      } else {
        ((ObjectNode) parent).set(at.last().getMatchingProperty(), value);
      }
    } catch (IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }

  private void remove(String pointer) {
    JsonPointer at = JsonPointer.compile(pointer);
    JsonNode parent = sheet.at(at.head());
    if (parent instanceof ArrayNode array) {
      array.remove(at.last().getMatchingIndex());
    } else {
      ((ObjectNode) parent).remove(at.last().getMatchingProperty());
    }
  }

  @Test
  void a_default_that_its_requirement_meets_is_no_fault() {
    set("/choices/2/default", "hooks");
    assertEquals("quillmere-top", SHEETS.read(sheet).id());
  }

  @Test
  void defaults_that_exclude_each_other_are_faulted_at_the_choices() {
    set("/choices/2/default", "hooks");
    set("/choices/1/default", "drawn-in");
    assertFault("/choices", "default options cannot stand together");
  }

  @Test
  void a_seam_that_hangs_on_a_piece_that_may_be_left_out_needs_a_finish() {
    set("/pieces/5/optional", "true");
    set("/pieces/5/leftOut", "There are no straps.");
    assertFault("/pieces/0/edges/1", "may be left out");
  }

  @Test
  void more_options_than_can_be_picked_together_are_faulted() {
    ArrayNode options = (ArrayNode) sheet.at("/choices/0/options");
    for (int i = 0; i < 3; i++) {
      options.addObject().put("id", "neck-" + i).put("name", "Neck " + i);
    }
    set("/choices/0/pick", "any");
    assertFault("/choices/0/options", "Any of 5 options");
  }

  @Test
  void a_missing_key_is_faulted_with_what_it_should_hold() {
    remove("/summary");
    SheetFault fault = faults(sheet).get(0);
    assertEquals(new SheetFault("", "'summary' is missing.", fault.remedy()), fault);
    assertTrue(fault.remedy().contains("sentences for a list"));
  }

  // Generous, since machines differ: it normally takes a fraction of this.
  @Test
  void the_largest_legal_sheet_is_checked_in_moments() {
    assertTimeout(
        Duration.ofSeconds(10),
        () -> assertEquals("largest", SHEETS.readYaml(LargestSheet.yaml(false)).id()));
  }

  @Test
  void more_ways_of_choosing_than_are_read_are_faulted() {
    List<SheetFault> faults =
        assertThrows(SheetFaults.class, () -> SHEETS.readYaml(LargestSheet.yaml(true))).faults();
    assertEquals(List.of("/choices"), faults.stream().map(SheetFault::pointer).toList());
    assertTrue(faults.get(0).problem().contains("1024 ways"), faults::toString);
  }

  @Test
  void faults_of_sizes_cloths_and_names_are_told_together() {
    set("/sizes/grid/bands/1/underbust/from", "68 cm");
    set("/cloth/main/recovery", "120 %");
    set("/trims/0/of", "hem");
    assertEquals(
        List.of("/cloth/main", "/sizes/grid/bands/1", "/trims/0/of"),
        faults(sheet).stream().map(SheetFault::pointer).sorted().toList());
  }

  @Test
  void text_that_is_no_yaml_is_one_fault() {
    assertEquals(1, assertThrows(SheetFaults.class, () -> SHEETS.readYaml("a: [")).faults().size());
    assertEquals(1, assertThrows(SheetFaults.class, () -> SHEETS.readYaml("")).faults().size());
  }

  @Test
  void keys_given_twice_and_sheets_without_end_are_refused() {
    String twice =
        assertThrows(SheetFaults.class, () -> SHEETS.readYaml("a: 1\na: 2")).getMessage();
    assertTrue(twice.contains("Duplicate"), twice);
    assertThrows(SheetFaults.class, () -> SHEETS.readJson("{} {}"));
    assertThrows(SheetFaults.class, () -> SHEETS.readJson("["));
    assertThrows(SheetFaults.class, () -> SHEETS.readYaml("[".repeat(10_000)));
    assertThrows(SheetFaults.class, () -> SHEETS.readYaml("a: " + "b".repeat(500_000)));
  }

  // Nested aliases that would expand to a billion words; here they stay text.
  @Test
  void aliases_are_not_expanded() {
    StringBuilder text = new StringBuilder("a0: &a0 [lol, lol]\n");
    for (int i = 1; i < 10; i++) {
      text.append(
          "a%d: &a%d [%s]\n".formatted(i, i, "*a" + (i - 1) + (", *a" + (i - 1)).repeat(9)));
    }
    assertThrows(SheetFaults.class, () -> SHEETS.readYaml(text.toString()));
  }

  // The JSON Schema 2020-12 meta-schema, as shipped with the validator library.
  @Test
  void the_schema_is_itself_valid() throws IOException {
    var meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertEquals(List.of(), meta.validate(resource("pattern-sheet.schema.json"), InputFormat.JSON));
  }
}
