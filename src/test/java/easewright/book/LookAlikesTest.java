package easewright.book;

import static java.util.stream.Collectors.toSet;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.diagnosis.Answer;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Fittings alike but for the observation that decides; the table and its sources are in the file.
 */
class LookAlikesTest {
  private static final String NOTHING = "nothing";
  private static final List<Row> ROWS = read();

  private record Row(
      String sign, String decides, String source, List<String> alike, List<Try> fittings) {}

  private record Try(
      String it, List<String> seen, List<String> unseen, ObjectNode numbers, String first) {}

  @TestFactory
  Stream<DynamicTest> whatDecidesFlipsTheFirstCause() {
    return ROWS.stream()
        .flatMap(
            row ->
                row.fittings().stream()
                    .map(
                        one ->
                            DynamicTest.dynamicTest(
                                row.sign() + ": " + one.it(),
                                () -> {
                                  Answer answer = Consulting.answer(fitting(row, one));
                                  assertEquals(
                                      one.first(), first(answer), Consulting.leading(answer));
                                })));
  }

  @Test
  void every_row_has_at_least_three_fittings_each_with_another_first_cause() {
    assertEquals(17, ROWS.size());
    for (Row row : ROWS) {
      assertTrue(row.fittings().size() >= 3, row.sign());
      assertEquals(
          row.fittings().size(),
          row.fittings().stream().map(Try::first).collect(toSet()).size(),
          row.sign());
      assertTrue(!row.decides().isBlank() && !row.source().isBlank(), row.sign());
    }
  }

  private static String first(Answer answer) {
    boolean nothing =
        answer.causes().isEmpty() || answer.nothingWrong() > answer.causes().get(0).probability();
    return nothing ? NOTHING : answer.causes().get(0).id();
  }

  private static ObjectNode fitting(Row row, Try one) {
    ObjectNode fitting =
        one.numbers() == null ? JsonNodeFactory.instance.objectNode() : one.numbers().deepCopy();
    row.alike().forEach(sign -> Consulting.report(fitting, sign, true, "clear"));
    one.seen().forEach(sign -> Consulting.report(fitting, sign, true, "clear"));
    one.unseen().forEach(sign -> Consulting.report(fitting, sign, false, null));
    return fitting;
  }

  private static List<Row> read() {
    try (InputStream file = LookAlikesTest.class.getResourceAsStream("/look-alikes.yaml")) {
      List<Row> rows = new ArrayList<>();
      for (JsonNode row : new YAMLMapper().readTree(file)) {
        List<Try> fittings = new ArrayList<>();
        for (JsonNode one : row.path("fittings")) {
          fittings.add(
              new Try(
                  one.path("it").asText(),
                  texts(one.path("seen")),
                  texts(one.path("unseen")),
                  one.path("numbers") instanceof ObjectNode numbers ? numbers : null,
                  one.path("first").asText()));
        }
        rows.add(
            new Row(
                row.path("sign").asText(),
                row.path("decides").asText(),
                row.path("source").asText(),
                texts(row.path("alike")),
                fittings));
      }
      return rows;
    } catch (IOException e) {
      throw new IllegalStateException("The table of look-alikes cannot be read.", e);
    }
  }

  private static List<String> texts(JsonNode node) {
    List<String> texts = new ArrayList<>();
    node.forEach(text -> texts.add(text.asText()));
    return texts;
  }
}
