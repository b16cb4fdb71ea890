package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
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
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  // Places are JSON pointers after RFC 6901: each must lead to something in the sheet as given.
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

  // Each line breaks the shipped sheet in one place: where, what is put there, where the fault is
  // expected and words of it. Pieces: 0 front, 1 side panel, 2 to 4 backs, 5 strap, 6 underband.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "/schemaVersion | 2 | /schemaVersion | constant",
        "/id | Quillmere Top | /id | not written as it should be",
        "/colour | red | `` | 'colour' is no key",
        "/supportClass | extreme | /supportClass | enumeration",
        "/seamAllowance | '9.5' | /seamAllowance | not written as it should be",
        "/seamAllowance | 1/0 in | /seamAllowance | fraction over zero",
        "/pieces | [] | /pieces | at least 1",
        "/pieces/0/count | 9 | /pieces/0/count | maximum",
        "/sizes/grid/bands/1/underbust/from | 68 cm | /sizes/grid/bands/1 | between 675 mm and 680",
        "/sizes/grid/cups/2/difference/from | 15 cm | /sizes/grid/cups/2 | same bodies",
        "/sizes/grid/cups/2/difference/to | 10 cm | /sizes/grid/cups/2/difference | ends beyond",
        "/sizes/grid/bands/1/label | '65' | /sizes/grid/bands/1 | second time",
        "/sizes/grid/measurements/underband/base | 900 mm | /sizes | not smaller than any body",
        "/sizes/grid/measurements/sideSeam/perBand | -30 mm"
            + " | /sizes/grid/measurements/sideSeam | nothing or less",
        "/pieces/0/id | strap | /pieces/5/id | second time",
        "/pieces/0/mirrored | true | /pieces/0 | either on the fold or mirrored",
        "/pieces/1/count | 3 | /pieces/1 | in pairs",
        "/pieces/2/when | {back: [open]} | /pieces/2/when/back/0 | no option 'back/open'",
        "/pieces/2/when | {hem: [wide]} | /pieces/2/when/hem/0 | no option 'hem/wide'",
        "/pieces/0/edges/3/length | bustSeam | /pieces/0/edges/3/length | 'bustSeam'",
        "/pieces/0/edges/3/sewnTo | [side/shaped-seam]"
            + " | /pieces/0/edges/3/sewnTo/0 | no edge 'side/shaped-seam'",
        "/pieces/0/edges/3/sewnTo | [side-panel/side-seam]"
            + " | /pieces/0/edges/3/sewnTo/0 | not sewn back",
        "/pieces/0/edges/3/length | sideSeam | /pieces/0/edges/3 | what it is sewn to",
        "/sizes/grid/measurements/backLowerEdge/perBand | 13 mm"
            + " | /pieces/6/edges/0 | what it is sewn to",
        "/pieces/0/edges/3/crosses | [underband] | /pieces/0/edges/3/sewnTo/0 | same girths",
        "/pieces/8/follows | strap-lining | /pieces/8/follows | no main piece",
        "/pieces/8/lines | [apex] | /pieces/8 | from there",
        "/pieces/8/outlines | {75F: [{x: 0 mm, y: 0 mm}, {x: 9 mm, y: 0 mm}, {x: 0 mm, y: 9 mm}]}"
            + " | /pieces/8/outlines/75F | no size '75F'",
        "/trims/0/of | hem | /trims/0/of | 'hem'",
        "/trims/0/when | {straps: [wide]} | /trims/0/when/straps/0 | 'straps/wide'",
        "/trims/0/fraction | 0 % | /trims/0 | from part of a measurement",
        "/cloth/main/recovery | 120 % | /cloth/main | recovery",
        "/choices/0/default | low | /choices/0/default | 'neckline/low'",
        "/choices/0/options/1/changes | {collar: 9 mm}"
            + " | /choices/0/options/1/changes/collar | 'collar'",
        "/choices/2/options/1/requires/0 | back/open | /choices/2/options/1/requires/0 | back/open",
        "/choices/2/default | hooks | /choices | none",
        "/choices/1/options/1/id | rounded | /choices/1/options/1/id | option twice"
      })
  void aSheetBrokenInOnePlaceIsFaultedThere(
      String place, String value, String pointer, String words) {
    set(place, value);
    if (words.equals("none")) {
      assertEquals("quillmere-top", SHEETS.read(sheet).id());
    } else {
      assertFault(pointer, words);
    }
  }

  @Test
  void defaultsThatExcludeEachOtherAreFaultedAtTheChoices() {
    set("/choices/2/default", "hooks");
    set("/choices/1/default", "drawn-in");
    assertFault("/choices", "default options cannot stand together");
  }

  @Test
  void anEdgeNeitherSewnNorFinishedIsFaulted() {
    remove("/pieces/0/edges/0/finish");
    assertFault("/pieces/0/edges/0", "sewn to nothing");
  }

  @Test
  void anEdgeWhosePartnerIsNotCutUnderSomeChoiceIsFaulted() {
    set("/pieces/6/when", "{closure: [pull-on], back: [rounded]}");
    assertFault("/pieces/0/edges/4", "sewn to nothing under");
  }

  @Test
  void aChoiceThatChangesNothingIsFaulted() {
    remove("/choices/0/options/1/changes");
    assertFault("/choices/0", "changes nothing");
  }

  @Test
  void aLayerWithoutAClothNeedIsFaultedAtItsPieces() {
    remove("/cloth/lining");
    assertFault("/pieces/8/layer", "'lining' cloth");
  }

  @Test
  void aSheetThatDoesNotMeasureItsUnderbandCannotBeJudged() {
    remove("/sizes/grid/measurements/bust");
    assertFault("/sizes", "finished 'bust'");
  }

  @Test
  void aMissingKeyIsFaultedWithWhatItShouldHold() {
    remove("/summary");
    SheetFault fault = faults(sheet).get(0);
    assertEquals(new SheetFault("", "'summary' is missing.", fault.remedy()), fault);
    assertTrue(fault.remedy().contains("sentences for a list"));
  }

  @Test
  void moreWaysOfChoosingThanAreReadAreFaulted() {
    ArrayNode options = (ArrayNode) sheet.at("/choices/0/options");
    for (int i = 0; i < 10; i++) {
      options.addObject().put("id", "neck-" + i).put("name", "Neck " + i);
    }
    assertFault("/choices", "192 ways");
  }

  @Test
  void faultsOfSizesClothsAndNamesAreToldTogether() {
    set("/sizes/grid/bands/1/underbust/from", "68 cm");
    set("/cloth/main/recovery", "120 %");
    set("/trims/0/of", "hem");
    assertEquals(
        List.of("/cloth/main", "/sizes/grid/bands/1", "/trims/0/of"),
        faults(sheet).stream().map(SheetFault::pointer).sorted().toList());
  }

  @Test
  void namedSizesWithGapsOverlapsAndHolesAreFaulted() {
    set(
        "/sizes",
        """
        named:
          - name: S
            underbust: {from: 65 cm, to: 72 cm}
            bust: {from: 78 cm, to: 86 cm}
            measurements: {underband: 610 mm, bust: 750 mm, hem: 9 mm}
          - name: M
            underbust: {from: 70 cm, to: 79 cm}
            bust: {from: 84 cm, to: 94 cm}
            measurements: {underband: 670 mm, bust: 820 mm}
          - name: L
            underbust: {from: 81 cm, to: 88 cm}
            bust: {from: 94 cm, to: 102 cm}
            measurements: {underband: 740 mm, bust: 900 mm, hem: 9 mm}
        """);
    String told =
        faults(sheet).stream()
            .map(fault -> fault.pointer() + " " + fault.problem())
            .collect(Collectors.joining("\n"));
    assertTrue(told.contains("/sizes/named/1 The sizes 'S' and 'M'"), told);
    assertTrue(told.contains("/sizes/named/2 No size has its underbust"), told);
    assertTrue(told.contains("/sizes/named/1/measurements The size 'M' lacks 'hem'"), told);
  }

  @Test
  void textThatIsNoYamlIsOneFault() {
    assertEquals(1, assertThrows(SheetFaults.class, () -> SHEETS.readYaml("a: [")).faults().size());
    assertEquals(1, assertThrows(SheetFaults.class, () -> SHEETS.readYaml("")).faults().size());
  }

  @Test
  void keysGivenTwiceAndSheetsWithoutEndAreRefused() {
    String twice =
        assertThrows(SheetFaults.class, () -> SHEETS.readYaml("a: 1\na: 2")).getMessage();
    assertTrue(twice.contains("Duplicate"), twice);
    assertThrows(SheetFaults.class, () -> SHEETS.readYaml("[".repeat(10_000)));
    assertThrows(SheetFaults.class, () -> SHEETS.readYaml("a: " + "b".repeat(500_000)));
  }

  // Nested aliases that would expand to a thousand million words; here they stay text.
  @Test
  void aliasesAreNotExpanded() {
    StringBuilder text = new StringBuilder("a0: &a0 [lol, lol]\n");
    for (int i = 1; i < 10; i++) {
      text.append(
          "a%d: &a%d [%s]\n".formatted(i, i, "*a" + (i - 1) + (", *a" + (i - 1)).repeat(9)));
    }
    assertThrows(SheetFaults.class, () -> SHEETS.readYaml(text.toString()));
  }

  // The JSON Schema 2020-12 meta-schema, as the validator library carries it.
  @Test
  void theSchemaIsItselfValid() throws IOException {
    var meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertEquals(List.of(), meta.validate(resource("pattern-sheet.schema.json"), InputFormat.JSON));
  }
}
