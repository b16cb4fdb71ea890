package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertFalse;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.core.JsonPointer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.BeforeContainer;

/**
 * Any uploaded sheet, in YAML or JSON, is either parsed or rejected with faults that have a
 * location (RFC 6901) and a remedy.
 */
class SheetFuzzTest {
  private static final PatternSheets SHEETS = new PatternSheets();
  private static byte[] small;

  @BeforeContainer
  static void readExample() throws IOException {
    small = Files.readAllBytes(Path.of("openapi/examples/small-sheet.yaml"));
  }

  @FuzzTest(maxDuration = "4m")
  void any_bytes(byte[] sheet) {
    readOrRefused(new String(sheet, StandardCharsets.UTF_8));
  }

  @Property(tries = 1000)
  void the_small_sheet_with_some_of_it_elsewhere(@ForAll long seed) {
    byte[] sheet = small.clone();
    Random random = new Random(seed);
    for (int change = random.nextInt(4); change >= 0; change--) {
      int from = random.nextInt(sheet.length);
      int to = random.nextInt(sheet.length);
      int length = Math.min(random.nextInt(12), sheet.length - Math.max(from, to));
      System.arraycopy(small, from, sheet, to, length);
    }
    readOrRefused(new String(sheet, StandardCharsets.UTF_8));
  }

  private static void readOrRefused(String text) {
    try {
      SHEETS.readYaml(text);
    } catch (SheetFaults refusal) {
      assertSaid(refusal);
    }
    try {
      SHEETS.readJson(text);
    } catch (SheetFaults refusal) {
      assertSaid(refusal);
    }
  }

  private static void assertSaid(SheetFaults refusal) {
    assertFalse(refusal.faults().isEmpty());
    for (SheetFault fault : refusal.faults()) {
      JsonPointer.compile(fault.pointer());
      assertFalse(
          fault.problem().isBlank() || fault.remedy().isBlank(),
          () -> fault.pointer() + " [" + fault.problem() + "] [" + fault.remedy() + "]");
    }
  }
}
