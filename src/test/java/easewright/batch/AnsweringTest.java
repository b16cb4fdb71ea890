package easewright.batch;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.junit.jupiter.api.Test;

/** Every message has one reply, faulty or not; problems follow RFC 9457. */
class AnsweringTest {
  private final Answering answering = Bench.answering();

  @Test
  void a_fitting_is_answered_under_its_key_with_its_offset_and_the_rule_book() throws IOException {
    ProducerRecord<byte[], byte[]> reply =
        answering.reply(Bench.message(7, "order 12", Bench.ONE_SIGN));

    assertEquals(Bench.ANSWERS, reply.topic());
    assertFalse(answering.isSetAside(reply));
    assertEquals("order 12", new String(reply.key(), UTF_8));
    assertEquals(Bench.FITTINGS, Bench.header(reply, Answering.SOURCE_TOPIC));
    assertEquals("0", Bench.header(reply, Answering.SOURCE_PARTITION));
    assertEquals("7", Bench.header(reply, Answering.SOURCE_OFFSET));
    assertEquals(Bench.version(), Bench.header(reply, Answering.RULE_BOOK_VERSION));
    JsonNode answer = Bench.JSON.readTree(reply.value());
    assertEquals(
        answer.at("/ruleBook/hash").textValue(), Bench.header(reply, Answering.RULE_BOOK_HASH));
    assertTrue(answer.path("causes").isArray());
  }

  @Test
  void the_same_message_taken_twice_gets_the_same_reply() {
    ProducerRecord<byte[], byte[]> one = answering.reply(Bench.message(1, "a", Bench.ONE_SIGN));
    ProducerRecord<byte[], byte[]> two = answering.reply(Bench.message(1, "a", Bench.ONE_SIGN));

    assertArrayEquals(one.value(), two.value());
    assertEquals(one.headers(), two.headers());
  }

  /** Kafka documentation, "Log Compaction": a key without a value deletes the key's messages. */
  @Test
  void a_message_without_a_value_takes_the_answer_of_its_key_away() {
    ProducerRecord<byte[], byte[]> reply = answering.reply(Bench.message(0, "a", null));

    assertEquals(Bench.ANSWERS, reply.topic());
    assertEquals("a", new String(reply.key(), UTF_8));
    assertNull(reply.value());
  }

  @Test
  void a_message_without_a_key_is_set_aside_since_its_answer_could_not_be_assigned()
      throws IOException {
    assertProblem("no-key", answering.reply(Bench.message(0, null, Bench.ONE_SIGN)));
  }

  @Test
  void a_fitting_that_cannot_be_read_is_set_aside_with_its_faults() throws IOException {
    byte[] unknown = "{\"signs\": [{\"sign\": \"sings-at-night\"}]}".getBytes(UTF_8);

    JsonNode problem = assertProblem("unreadable", answering.reply(Bench.message(0, "a", unknown)));

    assertEquals("/signs/0/sign", problem.at("/faults/0/pointer").textValue());
  }

  @Test
  void a_fitting_that_causes_a_server_error_is_set_aside_and_nothing_of_it_is_revealed()
      throws IOException {
    Answering failing =
        Bench.answering(
            body -> {
              throw new IllegalStateException("94");
            });

    ProducerRecord<byte[], byte[]> reply = failing.reply(Bench.message(0, "a", Bench.ONE_SIGN));

    assertProblem("failed", reply);
    assertFalse(new String(reply.value(), UTF_8).contains("94"));
  }

  private JsonNode assertProblem(String kind, ProducerRecord<byte[], byte[]> reply)
      throws IOException {
    assertTrue(answering.isSetAside(reply));
    assertEquals("application/problem+json", Bench.header(reply, Answering.CONTENT_TYPE));
    JsonNode problem = Bench.JSON.readTree(reply.value());
    assertEquals("/problems/" + kind, problem.path("type").textValue());
    return problem;
  }
}
