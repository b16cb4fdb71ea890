package easewright.batch;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.RuleBookStamp;
import easewright.request.FaultyRequest;
import easewright.request.RequestJson;
import easewright.saying.Problem;
import java.util.function.Function;
import java.util.function.Supplier;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.header.Headers;
import org.jboss.logging.Logger;

/**
 * Answers a message with a fitting: with a message of the same key to the topic of answers, or with
 * the problem to the set-aside topic. Its headers name the original message and the rule book used;
 * so the same message under the same rule book always gets the same reply.
 */
final class Answering {
  static final String CONTENT_TYPE = "content-type";
  static final String SOURCE_TOPIC = "source-topic";
  static final String SOURCE_PARTITION = "source-partition";
  static final String SOURCE_OFFSET = "source-offset";
  static final String RULE_BOOK_VERSION = "rule-book-version";
  static final String RULE_BOOK_HASH = "rule-book-hash";

  private static final Logger LOG = Logger.getLogger(Answering.class);
  private static final Problem NO_KEY =
      Problem.of(
          "no-key", "The message has no key", 400, "Send it with the key you know the fitting by.");
  private static final Problem TOO_LARGE_ANSWER =
      Problem.of(
          "too-large-answer",
          "The answer is too large",
          500,
          "The topic of answers takes no message of this size.");

  private final Settings.Topics topics;
  private final Function<JsonNode, Answer> fittings;
  private final Supplier<RuleBookStamp> ruleBook;
  private final ObjectMapper json;

  Answering(
      Settings.Topics topics,
      Function<JsonNode, Answer> fittings,
      Supplier<RuleBookStamp> ruleBook,
      ObjectMapper json) {
    this.topics = topics;
    this.fittings = fittings;
    this.ruleBook = ruleBook;
    this.json = json;
  }

  /** The reply to a message, faulty or not. */
  ProducerRecord<byte[], byte[]> reply(ConsumerRecord<byte[], byte[]> taken) {
    if (taken.key() == null) {
      return setAside(taken, NO_KEY);
    }
    if (taken.value() == null) {
      // A tombstone: by Kafka's convention it deletes the key's messages, so its answer is deleted
      // too.
      return message(topics.answers(), taken, ruleBook.get(), null);
    }
    try {
      Answer answer = fittings.apply(RequestJson.parse(taken.value()));
      ProducerRecord<byte[], byte[]> reply =
          message(topics.answers(), taken, answer.ruleBook(), bytes(answer));
      return withHeader(reply, CONTENT_TYPE, "application/json");
    } catch (FaultyRequest | RequestJson.TooLarge request) {
      return setAside(taken, Problem.of(request));
    } catch (RuntimeException failure) {
      LOG.error("A fitting of a batch failed", failure);
      return setAside(taken, Problem.of(failure));
    }
  }

  /** The replacement for a reply that the broker rejected for its size. */
  ProducerRecord<byte[], byte[]> tooLarge(ConsumerRecord<byte[], byte[]> taken) {
    return setAside(taken, TOO_LARGE_ANSWER);
  }

  /** Whether a reply contains a problem. */
  boolean isSetAside(ProducerRecord<byte[], byte[]> reply) {
    return reply.topic().equals(topics.setAside());
  }

  private ProducerRecord<byte[], byte[]> setAside(
      ConsumerRecord<byte[], byte[]> taken, Problem problem) {
    return withHeader(
        message(topics.setAside(), taken, ruleBook.get(), bytes(problem)),
        CONTENT_TYPE,
        Problem.MEDIA_TYPE);
  }

  private static ProducerRecord<byte[], byte[]> message(
      String topic, ConsumerRecord<byte[], byte[]> taken, RuleBookStamp ruleBook, byte[] value) {
    ProducerRecord<byte[], byte[]> message = new ProducerRecord<>(topic, taken.key(), value);
    withHeader(message, SOURCE_TOPIC, taken.topic());
    withHeader(message, SOURCE_PARTITION, Integer.toString(taken.partition()));
    withHeader(message, SOURCE_OFFSET, Long.toString(taken.offset()));
    withHeader(message, RULE_BOOK_VERSION, ruleBook.version());
    return withHeader(message, RULE_BOOK_HASH, ruleBook.hash());
  }

  private static ProducerRecord<byte[], byte[]> withHeader(
      ProducerRecord<byte[], byte[]> message, String name, String value) {
    Headers headers = message.headers();
    headers.add(name, value.getBytes(UTF_8));
    return message;
  }

  private byte[] bytes(Object answer) {
    try {
      return json.writeValueAsBytes(answer);
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("An answer can't be written.", impossible);
    }
  }
}
