package easewright.request;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import easewright.deadline.Deadline;
import easewright.deadline.DeadlinePassed;
import easewright.pattern.PatternSheets;
import easewright.rulebook.RuleBookSource;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Texts of requests and the phrases that match them. */
class TextReaderTest {
  @Test
  void phrases_prepared_during_a_request_that_timed_out_serve_the_next_one() {
    TextReader reader = new TextReader(RuleBookSource.read(Path.of("rules")), new PatternSheets());
    ObjectNode request = JsonNodeFactory.instance.objectNode().put("text", "The straps slip off.");

    assertThrows(
        DeadlinePassed.class,
        () -> Deadline.within(Duration.ofNanos(1), () -> reader.readAnything(request)));

    assertFalse(reader.readAnything(request).fitting().path("signs").isEmpty());
  }
}
