package easewright.diagnosis;

import static easewright.diagnosis.Draws.mask;
import static easewright.diagnosis.Draws.uniform;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.pattern.PatternSheet;
import easewright.pattern.PatternSize;
import easewright.pattern.SheetChoice;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** A pattern: none, shipped or sent along; a size near the body or any; options. */
record PatternPick(int kind, int size, boolean near, int options, int support) {
  /** A shipped sheet as it is written. */
  static final ObjectNode QUILLMERE = written();

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final PatternSheet SHEET = Answering.SHEETS.shipped().get(0);

  void write(ObjectNode json, double underbust) {
    ObjectNode choices = JSON.objectNode();
    if (kind < 3) {
      SHEET
          .choices()
          .forEach(c -> pick(choices, c, (options >> 3 * SHEET.choices().indexOf(c)) & 7));
    } else {
      legal(choices);
      List<PatternSize> sizes =
          SHEET.sizes().stream()
              .filter(
                  z -> !near || Math.abs(z.underbustMm().orElseThrow().middleMm() - underbust) < 60)
              .toList();
      if (!sizes.isEmpty() && size < 900) {
        json.put("sizeCut", sizes.get(size % sizes.size()).name());
      }
      ObjectNode pattern = json.putObject("pattern");
      if (kind < 9) {
        pattern.put("sheet", SHEET.id());
      } else {
        pattern.set("inline", varied());
      }
    }
    if (!choices.isEmpty()) {
      json.set("choices", choices);
    }
  }

  private void legal(ObjectNode choices) {
    SHEET.choices().forEach(c -> pick(choices, c, (options >> 3 * SHEET.choices().indexOf(c)) & 7));
    if (choices.path("closure").asText().equals("hooks")) {
      choices.remove("back");
    }
  }

  private static void pick(ObjectNode choices, SheetChoice choice, int pick) {
    if (pick < choice.options().size()) {
      choices.put(choice.id(), choice.options().get(pick).id());
    }
  }

  private ObjectNode varied() {
    ObjectNode sheet = QUILLMERE.deepCopy();
    sheet.put("id", "sent-along");
    sheet.put("supportClass", List.of("low", "medium", "high").get(support));
    return sheet;
  }

  static Arbitrary<PatternPick> any() {
    return Combinators.combine(
            uniform(10), uniform(1000), Arbitraries.of(true, true, false), mask(18), uniform(3))
        .as(PatternPick::new);
  }

  private static ObjectNode written() {
    try {
      return (ObjectNode)
          new YAMLMapper()
              .readTree(
                  Path.of("src/main/resources/easewright/patterns/quillmere-top.yaml").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
