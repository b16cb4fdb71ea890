package easewright.request;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import easewright.pattern.PatternSheets;
import easewright.request.IntakeAnswer.NotUnderstoodNote;
import easewright.rulebook.RuleBook;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Whoever says what is seen and not where is asked where, not refused (common practice). */
class WhereItIsTest {
  private static final TextReader READER =
      new TextReader(RuleBook.compiledIn().source(), new PatternSheets());

  @BeforeAll
  static void prepare() {
    READER.prepare();
  }

  private static IntakeAnswer read(String text) {
    return READER.readAnything(JsonNodeFactory.instance.objectNode().put("text", text));
  }

  private static List<NotUnderstoodNote> unplaced(String text) {
    return read(text).notUnderstood().stream().filter(one -> one.where() != null).toList();
  }

  @Test
  void what_is_seen_without_a_place_is_asked_for() {
    for (String text : List.of("it rides up", "wrinkles", "it gapes", "it digs in", "it rolls")) {
      assertEquals(IntakeAnswer.FIT_QUESTION, read(text).kind(), text);
      List<NotUnderstoodNote> asked = unplaced(text);
      assertEquals(1, asked.size(), text);
      assertTrue(asked.get(0).perhaps().size() > 1, text);
      assertTrue(asked.get(0).where().startsWith("Where is that"), asked.get(0).where());
    }
    assertTrue(
        unplaced("it rides up").get(0).perhaps().stream()
            .anyMatch(one -> one.sign().equals("band-rides-up-at-the-back")));
  }

  @Test
  void what_says_its_place_is_not_asked_for() {
    assertEquals(List.of(), unplaced("It rides up at the back"));
    assertEquals(List.of(), unplaced("My neckline gapes and it rides up at the back"));
  }

  @Test
  void what_speaks_of_something_else_stays_so() {
    for (String text : List.of("my cat rolls over", "The weather is nice today.")) {
      assertEquals(IntakeAnswer.OTHER, read(text).kind(), text);
    }
  }
}
