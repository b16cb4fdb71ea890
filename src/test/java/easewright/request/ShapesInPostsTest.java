package easewright.request;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import easewright.pattern.PatternSheets;
import easewright.rulebook.UsualBook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a post tells beside its signs (lines labelled by hand before they were read; common
 * practice). Every value counts, and so does every value read that is not there: half of the lines
 * hold look-alikes. The table is written to {@code target/shapes-in-posts.md}.
 */
class ShapesInPostsTest {
  private static final Path LINES = Path.of("src/test/resources/shapes-in-posts");
  private static final StringBuilder TABLE =
      new StringBuilder("| kind | precision | recall | labelled |\n|---|---|---|---|\n");

  private static final TextReader READER = new TextReader(UsualBook.read(), new PatternSheets());

  /** How many values were right, wrongly read and missed. */
  private static final class Tally {
    private int right;
    private int wrong;
    private int missed;
    private final StringBuilder slips = new StringBuilder();

    void compare(String text, Set<String> read, Set<String> wanted) {
      Set<String> extra = new TreeSet<>(read);
      extra.removeAll(wanted);
      Set<String> lost = new TreeSet<>(wanted);
      lost.removeAll(read);
      right += wanted.size() - lost.size();
      wrong += extra.size();
      missed += lost.size();
      if (!extra.isEmpty() || !lost.isEmpty()) {
        slips.append(text).append("\n   read ").append(extra).append(" missed ").append(lost);
        slips.append('\n');
      }
    }

    double precision() {
      return right + wrong == 0 ? 1 : right / (double) (right + wrong);
    }

    double recall() {
      return right + missed == 0 ? 1 : right / (double) (right + missed);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "amounts, 0.95, 0.95",
    "trials, 0.95, 0.90",
    "toiles, 0.95, 0.90",
    "garment, 0.95, 0.90",
    "design, 0.95, 0.90",
    "tapes, 0.95, 0.90",
    "numbers, 0.95, 0.90",
    "making, 0.95, 0.90"
  })
  void what_a_post_tells_is_read_as_a_teacher_reads_it(String kind, double precision, double recall)
      throws IOException {
    Tally tally = tally(LINES.resolve(kind + ".yaml"));
    TABLE.append(
        "| %s | %.2f | %.2f | %d |%n"
            .formatted(kind, tally.precision(), tally.recall(), tally.right + tally.missed));
    assertAll(
        tally.slips.toString(),
        () -> assertTrue(tally.precision() >= precision, "precision " + tally.precision()),
        () -> assertTrue(tally.recall() >= recall, "recall " + tally.recall()));
  }

  @Test
  void each_value_has_its_place_in_the_text() throws IOException {
    for (String kind : new String[] {"trials", "toiles", "garment", "design", "tapes", "making"}) {
      for (JsonNode line : read(LINES.resolve(kind + ".yaml")).path("lines")) {
        IntakeAnswer read = read(line.path("text").asText());
        for (String field : new String[] {"trials", "garment", "design", "making", "sizeSystem"}) {
          assertTrue(
              !read.fitting().has(field)
                  || read.spans().stream().anyMatch(one -> one.pointer().startsWith("/" + field)),
              line.path("text").asText() + " " + read);
        }
      }
    }
  }

  @Test
  void each_draft_is_a_request_that_is_accepted() throws IOException {
    FittingReader fittings =
        new FittingReader(KnownNames.of(UsualBook.read(), new PatternSheets()));
    try (Stream<Path> files = Files.list(LINES)) {
      for (Path file : files.sorted().toList()) {
        for (JsonNode line : read(file).path("lines")) {
          String text = line.path("text").asText();
          IntakeAnswer draft = read(text);
          try {
            fittings.read(draft.fitting(), draft);
          } catch (FaultyRequest refused) {
            // A line alone may tell nothing to go on; nothing else may be amiss with it.
            assertInstanceOf(TextWithoutAnswer.class, refused, text);
          }
        }
      }
    }
  }

  @AfterAll
  static void writeTable() throws IOException {
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target/shapes-in-posts.md"), TABLE.toString());
  }

  private static JsonNode read(Path file) throws IOException {
    return new YAMLMapper().readTree(file.toFile());
  }

  private static IntakeAnswer read(String text) {
    return READER.readAnything(JsonNodeFactory.instance.objectNode().put("text", text));
  }

  private static Tally tally(Path file) throws IOException {
    JsonNode all = read(file);
    Set<String> fields =
        StreamSupport.stream(all.path("fields").spliterator(), false)
            .map(JsonNode::asText)
            .collect(Collectors.toSet());
    String only = all.path("only").asText();
    Tally tally = new Tally();
    for (JsonNode line : all.path("lines")) {
      String text = line.path("text").asText();
      tally.compare(
          text,
          values(read(text).fitting(), fields, only),
          values(line.path("fitting"), fields, only));
    }
    return tally;
  }

  private static Set<String> values(JsonNode fitting, Set<String> fields, String only) {
    Set<String> values = new TreeSet<>();
    for (String field : fields) {
      add(field, fitting.path(field), values);
    }
    values.removeIf(one -> !one.contains(only));
    return values;
  }

  /** Every leaf with its way there; an item of a list goes by its id, not by its index. */
  private static void add(String at, JsonNode node, Set<String> values) {
    for (JsonNode item : node.isArray() ? node : node.path("")) {
      add(at + (item.isObject() ? "[" + idOf(item) + "]" : ""), item, values);
    }
    for (Map.Entry<String, JsonNode> entry : node.properties()) {
      if (!entry.getKey().equals("seen")) {
        add(at + "." + entry.getKey(), entry.getValue(), values);
      }
    }
    if (node.isValueNode()) {
      values.add(at + " = " + value(node.asText()));
    }
  }

  private static String idOf(JsonNode item) {
    for (String id : new String[] {"sign", "adjustment", "size", "edge"}) {
      if (item.has(id)) {
        return item.path(id).asText();
      }
    }
    return "";
  }

  private static String value(String text) {
    try {
      return Math.round(Quantity.parse(text).length().mm() * 10) / 10.0 + " mm";
    } catch (BadQuantity | IllegalArgumentException name) {
      return text;
    }
  }
}
