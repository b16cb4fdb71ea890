package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.intake.Reading.TextRead;
import easewright.intake.Reading.TimeRead;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Areas said to be fine, and times of signs (sentences labelled by hand; common practice). */
class AreasAndTimesTest {
  private static final Path SENTENCES = Path.of("src/test/resources/areas-and-times.yaml");

  @TestFactory
  Stream<DynamicTest> sentences_are_read_as_a_teacher_reads_them() throws IOException {
    JsonNode all = new YAMLMapper().readTree(SENTENCES.toFile());
    return StreamSupport.stream(all.spliterator(), false)
        .map(
            one ->
                DynamicTest.dynamicTest(
                    one.path("text").asText(), () -> assertReadAsLabelled(one)));
  }

  private static void assertReadAsLabelled(JsonNode one) {
    Reading reading = Reader.read(one.path("text").asText());
    if (one.has("times")) {
      assertEquals(words(one.path("times")), sorted(reading.times().stream().map(TimeRead::time)));
    }
    if (one.has("fine")) {
      assertEquals(words(one.path("fine")), sorted(reading.fine().stream().map(TextRead::value)));
    }
  }

  private static Set<String> words(JsonNode list) {
    return sorted(StreamSupport.stream(list.spliterator(), false).map(JsonNode::asText));
  }

  private static Set<String> sorted(Stream<String> words) {
    return words.collect(Collectors.toCollection(TreeSet::new));
  }
}
