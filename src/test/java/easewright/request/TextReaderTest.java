package easewright.request;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.deadline.Deadline;
import easewright.deadline.DeadlinePassed;
import easewright.pattern.PatternSheets;
import easewright.rulebook.UsualBook;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Texts of requests and the phrases that match them. */
class TextReaderTest {
  @Test
  void phrases_prepared_during_a_request_that_timed_out_serve_the_next_one() {
    TextReader reader = new TextReader(UsualBook.read(), new PatternSheets());
    ObjectNode request = JsonNodeFactory.instance.objectNode().put("text", "The straps slip off.");

    assertThrows(
        DeadlinePassed.class,
        () -> Deadline.within(Duration.ofNanos(1), () -> reader.readAnything(request)));

    assertFalse(reader.readAnything(request).fitting().path("signs").isEmpty());
  }

  /** What an earlier text perhaps meant gives way to what is said later, and more surely. */
  @Test
  void a_doubtful_reading_is_settled_by_the_next_text() {
    TextReader reader = new TextReader(UsualBook.read(), new PatternSheets());
    ObjectNode request = JsonNodeFactory.instance.objectNode();
    ObjectNode sign = request.withArray("signs").addObject();
    sign.put("sign", "straps-slip-off").put("seen", "present").put("degree", "strong");
    sign.put("sure", 0.4);
    ObjectNode denied = request.deepCopy().put("text", "The straps don't slip off.");

    JsonNode after = reader.readAnything(denied).fitting().at("/signs/0");
    assertEquals("absent", after.path("seen").textValue());
    assertFalse(after.has("degree"));
    assertTrue(after.path("sure").asDouble(1) > 0.4);

    ObjectNode said = request.deepCopy().put("text", "The straps slip off.");
    JsonNode confirmed = reader.readAnything(said).fitting().at("/signs/0");
    assertEquals("present", confirmed.path("seen").textValue());
    assertTrue(confirmed.path("sure").asDouble(1) > 0.4);
  }
}
