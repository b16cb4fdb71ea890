package easewright.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import easewright.saying.JsonFormat;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Sixty fittings, drawn at random by {@code RandomFittings}, are answered as recorded, so that no
 * essential part of an answer changes unnoticed; the cases of the rule pages and other tests check
 * what is correct. {@code -Deasewright.record=true} records again; read the diff.
 */
class DrawnFittingsTest {
  private static final Path FOLDER = Path.of("src/test/resources/easewright/http");
  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();
  private static final FittingReader READER =
      new FittingReader(KnownNames.of(BOOK.source(), SHEETS));
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final YAMLMapper YAML =
      YAMLMapper.builder().disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER).build();

  static {
    new JsonFormat().customize(JSON);
  }

  @Test
  void drawn_fittings_are_answered_as_recorded() throws IOException {
    Diagnosis diagnosis = new Diagnosis(BOOK, SHEETS.shipped());
    List<ObjectNode> now = new ArrayList<>();
    for (String line : Files.readAllLines(FOLDER.resolve("drawn-fittings.ndjson"))) {
      Answer answer = diagnosis.answer(READER.read(JSON.readTree(line)));
      now.add(AnswerInShort.of(JSON.valueToTree(answer)));
    }
    File recorded = FOLDER.resolve("drawn-fittings.answers.yaml").toFile();
    if (Boolean.getBoolean("easewright.record")) {
      YAML.writeValue(recorded, now);
    }
    List<ObjectNode> before = YAML.readValue(recorded, new TypeReference<>() {});
    assertEquals(before.size(), now.size());
    Map<String, List<String>> differences = new TreeMap<>();
    for (int i = 0; i < now.size(); i++) {
      List<String> found = AnswerInShort.differences(before.get(i), now.get(i));
      if (!found.isEmpty()) {
        differences.put("line %02d".formatted(i + 1), found);
      }
    }
    assertEquals(Map.of(), differences);
  }
}
