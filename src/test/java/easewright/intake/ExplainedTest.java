package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.reading.TrainedReader;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What sounds like a danger and is explained as none (common practice: in doubt it stands). */
class ExplainedTest {
  private static final RuleBookSource BOOK = UsualBook.read();
  private static final Intake INTAKE = new Intake(BOOK);
  private static final TrainedReader TRAINED = TrainedReader.shipped();

  static Stream<String> harmless() throws IOException {
    return lines("harmless");
  }

  static Stream<String> dangers() throws IOException {
    return lines("dangers");
  }

  private static Stream<String> lines(String kind) throws IOException {
    Path file = Path.of("src/test/resources/explained-dangers.yaml");
    return StreamSupport.stream(
            new YAMLMapper().readTree(file.toFile()).path(kind).spliterator(), false)
        .map(JsonNode::textValue);
  }

  @ParameterizedTest
  @MethodSource("harmless")
  void what_is_plainly_none_neither_stops_nor_is_shown(String text) {
    Reading words = INTAKE.read(text);
    assertFalse(isStopped(words), words::toString);
    assertTrue(words.readYourself().isEmpty(), words::toString);
    Reading both = INTAKE.read(text, null, Optional.of(TRAINED));
    assertFalse(isStopped(both), both::toString);
  }

  @ParameterizedTest
  @MethodSource("dangers")
  void a_danger_that_is_told_beside_an_explanation_stops_all_the_same(String text) {
    assertTrue(isStopped(INTAKE.read(text)), text);
    assertTrue(isStopped(INTAKE.read(text, null, Optional.of(TRAINED))), text);
  }

  private static boolean isStopped(Reading reading) {
    return reading.signs().stream()
        .anyMatch(
            one ->
                one.present()
                    && (BOOK.catalog().signs().get(one.id()).redFlag()
                        || one.id().equals("difference-between-the-sides-is-new")));
  }
}
