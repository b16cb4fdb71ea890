package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.reading.TrainedReader;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Somebody else's garment is not read as the writer's (common practice). */
class OthersSaidTest {
  private static final Intake INTAKE = new Intake(UsualBook.read());
  private static final TrainedReader TRAINED = TrainedReader.shipped();

  static Stream<JsonNode> posts() throws IOException {
    Path file = Path.of("src/test/resources/others-in-posts.yaml");
    return StreamSupport.stream(new YAMLMapper().readTree(file.toFile()).spliterator(), false);
  }

  @ParameterizedTest
  @MethodSource("posts")
  void the_garment_of_another_is_left_out(JsonNode post) {
    String text = post.path("text").textValue();
    Reading words = INTAKE.read(text);
    for (Reading reading : List.of(words, INTAKE.read(text, null, Optional.of(TRAINED)))) {
      post.path("not").forEach(one -> assertFalse(isRead(one, reading), reading::toString));
    }
    post.path("is").forEach(one -> assertTrue(isRead(one, words), words::toString));
    assertTrue(post.path("not").isEmpty() || !words.notUnderstood().isEmpty(), words::toString);
  }

  private static boolean isRead(JsonNode sign, Reading reading) {
    return reading.signs().stream()
        .anyMatch(one -> one.present() && one.id().equals(sign.textValue()));
  }
}
