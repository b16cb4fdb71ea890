package easewright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShippedSheetsTest {
  private static String resource(String name) throws IOException {
    try (InputStream found =
        ShippedSheetsTest.class.getResourceAsStream("/easewright/patterns/" + name)) {
      return new String(found.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void a_shipped_sheet_passes_every_check_a_strangers_sheet_must_pass() throws IOException {
    PatternSheets sheets = new PatternSheets();
    List<String> names = resource("index.txt").lines().filter(line -> !line.isBlank()).toList();
    assertFalse(names.isEmpty());
    for (String name : names) {
      PatternSheet checked = sheets.readYaml(resource(name));
      assertEquals(checked, sheets.find(checked.id()).orElseThrow());
    }
  }
}
