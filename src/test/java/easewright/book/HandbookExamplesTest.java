package easewright.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.AdjustmentNote;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Worked examples of published alteration handbooks; each names its source in the file. */
class HandbookExamplesTest {
  private static final double NEAR_MM = 3;

  private static List<JsonNode> examples() {
    try (InputStream file =
        HandbookExamplesTest.class.getResourceAsStream("/handbook-examples.yaml")) {
      return StreamSupport.stream(new YAMLMapper().readTree(file).spliterator(), false).toList();
    } catch (IOException e) {
      throw new IllegalStateException("The examples cannot be read.", e);
    }
  }

  @TestFactory
  Stream<DynamicTest> an_example_gets_the_cause_and_the_amount_of_its_handbook() {
    return examples().stream()
        .map(one -> DynamicTest.dynamicTest(one.path("it").asText(), () -> isAsInItsBook(one)));
  }

  private static void isAsInItsBook(JsonNode example) {
    Answer answer = Consulting.answer(example.path("given"));
    String leading = Consulting.leading(answer);
    assertEquals(example.path("first").asText(), Consulting.causes(answer).get(0), leading);
    AdjustmentNote change =
        answer.adjustments().stream()
            .filter(one -> one.id().equals(example.path("change").asText()))
            .findFirst()
            .orElse(null);
    List<String> offered = answer.adjustments().stream().map(AdjustmentNote::id).toList();
    assertNotNull(change, leading + ", offered " + offered);
    if (example.has("amount")) {
      double expected = example.path("amount").asDouble();
      assertNotNull(change.amount(), change.measureFirst());
      assertEquals(expected, change.amount().mm(), Math.max(NEAR_MM, expected / 10), leading);
    }
  }

  @Test
  void every_example_names_its_source() {
    assertTrue(examples().size() >= 12);
    for (JsonNode one : examples()) {
      assertTrue(one.path("source").asText().matches(".*(from memory|computed).*"), one.toString());
    }
  }
}
