package easewright.http;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import easewright.saying.JsonForm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.Test;

/**
 * Sixty fittings, once drawn at random by {@code RandomFittings}, are answered as recorded: a line
 * says what was answered in short, and a digest holds every word and number of it. So nothing of an
 * answer changes unawares; what is right is for the rule pages' cases and the other tests to say.
 * {@code -Deasewright.record=true} records anew; read the difference.
 */
class DrawnFittingsTest {
  private static final Path FOLDER = Path.of("src/test/resources/easewright/http");
  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();
  private static final FittingReader READER =
      new FittingReader(KnownNames.of(BOOK.catalog(), SHEETS));
  private static final ObjectMapper JSON = new ObjectMapper();

  static {
    new JsonForm().customize(JSON);
  }

  @Test
  void drawn_fittings_are_answered_as_recorded() throws IOException {
    Diagnosis diagnosis = new Diagnosis(BOOK, SHEETS.shipped());
    List<String> now = new ArrayList<>();
    for (String line : Files.readAllLines(FOLDER.resolve("drawn-fittings.ndjson"))) {
      JsonNode request = JSON.readTree(line);
      now.add(inShort(diagnosis.answer(READER.read(request))));
    }
    Path recorded = FOLDER.resolve("drawn-fittings.answers.txt");
    if (Boolean.getBoolean("easewright.record")) {
      Files.write(recorded, now);
    }
    assertEquals(String.join("\n", Files.readAllLines(recorded)), String.join("\n", now));
  }

  private static String inShort(Answer answer) throws IOException {
    String causes =
        answer.causes().stream()
            .limit(3)
            .map(cause -> String.format(Locale.ROOT, "%s %.2f", cause.id(), cause.probability()))
            .collect(Collectors.joining(", "));
    String advised =
        answer.adjustments().stream()
            .limit(3)
            .map(one -> one.id() + (one.amount() == null ? "" : " " + one.amount().text()))
            .collect(Collectors.joining(", "));
    String cautions =
        answer.cautions().stream().map(Answer.CautionNote::id).collect(Collectors.joining(", "));
    byte[] whole =
        Examples.withoutHash(JSON.readTree(JSON.writeValueAsBytes(answer)))
            .toString()
            .getBytes(UTF_8);
    return String.join(
        " | ", causes, advised, cautions, DigestUtils.sha256Hex(whole).substring(0, 16));
  }
}
