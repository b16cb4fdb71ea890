package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import easewright.reading.TrainedReader;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Words, model and both on posts of strangers, labelled by other hands who did not see the reader;
 * labels are common practice of fitting. Writes {@code target/readers-*.md}. With {@code
 * -Deasewright.reader.trial=FOLDER} it counts a model on trial.
 */
class ReadersTest {
  private static final Map<String, SignEntry> CATALOG =
      RuleBookSource.read(Path.of("rules")).catalog().signs();
  private static final Intake INTAKE = new Intake(RuleBookSource.read(Path.of("rules")));
  private static final TrainedReader TRAINED =
      Optional.ofNullable(System.getProperty("easewright.reader.trial"))
          .map(Path::of)
          .map(TrainedReader::in)
          .orElseGet(TrainedReader::shipped);

  @ParameterizedTest
  @ValueSource(strings = {"posts-strangers/e1", "posts-strangers/e3"})
  void both_together_read_strangers_posts_better_than_the_words(String set) throws IOException {
    assumeTrue(TRAINED.read("The band.").isPresent(), "no model is shipped yet");
    Map<String, ReadersCount> counts = new LinkedHashMap<>();
    List.of("words", "model", "both").forEach(name -> counts.put(name, new ReadersCount(CATALOG)));
    for (SignPost post : SignPost.in(set)) {
      counts.get("words").add(post, INTAKE.read(post.text()));
      counts.get("both").add(post, INTAKE.read(post.text(), null, Optional.of(TRAINED)));
      Joined alone = Joined.of(List.of(), TRAINED.read(post.text()).orElseThrow(), CATALOG);
      counts.get("model").add(post, alone.signs());
    }
    StringBuilder table = new StringBuilder(ReadersCount.HEAD);
    counts.forEach((name, count) -> table.append(count.row(name)));
    ReadersCount words = counts.get("words");
    ReadersCount both = counts.get("both");
    table.append(
        "%nFit question or not, wrong: words %d, both %d.%n%n%s"
            .formatted(words.kindWrong, both.kindWrong, both.reliability()));
    Files.createDirectories(Path.of("target"));
    Files.writeString(
        Path.of("target", "readers-" + set.replace("posts-strangers/", "") + ".md"), table);
    assertAll(
        table.toString(),
        () -> assertTrue(both.signs.precision() >= words.signs.precision(), "signs, precision"),
        () -> assertTrue(both.signs.recall() >= words.signs.recall(), "signs, recall"),
        () -> assertTrue(both.denials.recall() >= words.denials.recall(), "denials, recall"),
        () -> assertTrue(both.dangers.missed <= words.dangers.missed, "dangers missed"));
  }
}
