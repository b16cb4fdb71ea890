package easewright.intake;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.deadline.Deadline;
import easewright.reading.TrainedReader;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Words, model and both on posts of strangers, labelled by other hands who did not see the reader;
 * labels are common practice of fitting. Writes {@code target/readers-*.md}. With {@code
 * -Deasewright.reader.trial=FOLDER} it counts a model on trial.
 */
@Tag("long")
class ReadersTest {
  /** What one denial more or less weighs in the smallest set, which has 36. */
  private static final double ONE_DENIAL = 0.03;

  private static final RuleBookSource RULES = UsualBook.read();
  private static final Map<String, SignEntry> CATALOG = RULES.catalog().signs();
  private static final Intake INTAKE = new Intake(RULES);
  private static final TrainedReader TRAINED =
      Optional.ofNullable(System.getProperty("easewright.reader.trial"))
          .map(Path::of)
          .map(TrainedReader::in)
          .orElseGet(TrainedReader::shipped);

  /**
   * The file is what the command of src/training/reader/README.md made; it is made nowhere else.
   */
  @Test
  void the_shipped_model_is_the_one_that_was_tried() throws Exception {
    assertEquals(
        "8825a3226a8af4b547af6cbe5ca44396c51c87bc0eb841271d585005a8a97372", hash("reader.onnx"));
    assertEquals(
        "a8b8747fe6b42ac77fc6b1669829ee69aed68bbd5bdf2ee984fe32a789ff1c02", hash("phrases.bin"));
  }

  private static String hash(String name) throws Exception {
    byte[] file = Files.readAllBytes(Path.of("src/main/resources/easewright/reading", name));
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
  }

  /** The order of the signs is the model's; the book's is free. */
  @Test
  void the_model_knows_the_signs_of_the_catalog() throws IOException {
    Path settings = Path.of("src/main/resources/easewright/reading/reader.json");
    List<String> signs = new ArrayList<>();
    new ObjectMapper()
        .readTree(settings.toFile())
        .path("signs")
        .forEach(one -> signs.add(one.textValue()));
    assertEquals(new TreeSet<>(signs).size(), signs.size(), "a sign twice");
    assertEquals(new TreeSet<>(CATALOG.keySet()), new TreeSet<>(signs));
  }

  /** Every change of the catalog that the training data tells of at least eight times. */
  @Test
  void the_model_knows_changes_of_the_catalog() throws IOException {
    Path settings = Path.of("src/main/resources/easewright/reading/reader.json");
    List<String> columns = new ArrayList<>();
    new ObjectMapper()
        .readTree(settings.toFile())
        .path("changes")
        .forEach(one -> columns.add(one.textValue()));
    Set<String> changes = RULES.catalog().adjustments().keySet();
    List<String> known = columns.stream().filter(changes::contains).toList();
    assertEquals(
        List.of("done", "undone", "right", "better", "same", "worse"),
        columns.stream().filter(one -> !changes.contains(one)).toList());
    assertTrue(known.size() >= 80, known::toString);
    Set<String> told = new TreeSet<>();
    for (String folder : List.of("changes", "both")) {
      try (Stream<Path> hands = Files.list(Path.of("src/training/reader", folder))) {
        for (Path hand : hands.toList()) {
          for (String line : Files.readAllLines(hand)) {
            Matcher label = Pattern.compile("(?:un)?did:([a-z-]+)").matcher(line);
            label.results().forEach(one -> told.add(one.group(1)));
          }
        }
      }
    }
    told.removeAll(changes);
    assertEquals(Set.of(), told, "the training data names changes that are not in the catalog");
  }

  /** As long as the service takes a text, within the time that it takes for an answer. */
  @ParameterizedTest
  @ValueSource(strings = {"no. ", "! ", "the band rides up at the back, ", "It gapes. "})
  void the_longest_text_is_read_in_time(String again) {
    String longest = again.repeat(4000 / again.length());
    assertTrue(
        Deadline.within(Duration.ofSeconds(5), () -> TRAINED.read(longest)).isPresent(), again);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "posts-strangers/e1",
        "posts-strangers/e3",
        "posts-strangers/e4",
        "posts-strangers/e6",
        "posts-strangers/e7",
        "posts-strangers-aside/e2",
        "posts-strangers-aside/e5",
        "posts-aside/a",
        "posts-aside/b",
        "posts-aside/c",
        "posts-aside/f",
      })
  void both_together_read_strangers_posts_better_than_the_words(String set) throws IOException {
    Map<String, ReadersCount> counts = new LinkedHashMap<>();
    List.of("words", "model", "both").forEach(name -> counts.put(name, new ReadersCount(CATALOG)));
    for (SignPost post : SignPost.in(set)) {
      counts.get("words").add(post, INTAKE.read(post.text()));
      counts.get("both").add(post, INTAKE.read(post.text(), null, Optional.of(TRAINED)));
      Joined alone =
          Joined.of(List.of(), TRAINED.read(post.text()).orElseThrow(), CATALOG, any -> true);
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
    Files.writeString(Path.of("target", "readers-" + set.replace('/', '-') + ".md"), table);
    assertAll(
        table.toString(),
        () -> assertTrue(both.signs.precision() >= words.signs.precision(), "signs, precision"),
        () -> assertTrue(both.signs.recall() >= words.signs.recall(), "signs, recall"),
        () ->
            assertTrue(
                f(both.denials) >= f(words.denials) - ONE_DENIAL, "denials, precision and recall"),
        () -> assertTrue(both.dangers.missed <= words.dangers.missed, "dangers missed"));
  }

  /** The harmonic mean of precision and recall. */
  private static double f(PostsReport.Count count) {
    double sum = count.precision() + count.recall();
    return sum == 0 ? 0 : 2 * count.precision() * count.recall() / sum;
  }
}
