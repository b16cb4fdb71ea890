package easewright.batch;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.diagnosis.Answer;
import easewright.diagnosis.Answer.RuleBookStamp;
import easewright.diagnosis.Diagnosis;
import easewright.pattern.PatternSheets;
import easewright.request.FittingReader;
import easewright.request.KnownNames;
import easewright.rulebook.RuleBook;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.MockConsumer;
import org.apache.kafka.clients.producer.MockProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/** The shipped rule book between Kafka's own mock clients. */
final class Bench {
  static final String FITTINGS = "fittings";
  static final String ANSWERS = "answers";
  static final String SET_ASIDE = "set-aside";
  static final TopicPartition FIRST = new TopicPartition(FITTINGS, 0);
  static final byte[] ONE_SIGN = "{\"signs\": [{\"sign\": \"straps-slip-off\"}]}".getBytes(UTF_8);
  static final ObjectMapper JSON =
      new ObjectMapper().setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);

  private static final RuleBook BOOK = RuleBook.compiledIn();
  private static final PatternSheets SHEETS = new PatternSheets();

  private Bench() {}

  static Answering answering() {
    FittingReader reader = new FittingReader(KnownNames.of(BOOK.source(), SHEETS));
    Diagnosis diagnosis = new Diagnosis(BOOK, SHEETS.shipped());
    return answering(request -> diagnosis.answer(reader.read(request)));
  }

  static Answering answering(Function<JsonNode, Answer> fittings) {
    return new Answering(
        new Named(), fittings, () -> new RuleBookStamp(version(), BOOK.source().hash()), JSON);
  }

  static String version() {
    return BOOK.source().version();
  }

  static ConsumerRecord<byte[], byte[]> message(long offset, String key, byte[] value) {
    return new ConsumerRecord<>(
        FITTINGS, 0, offset, key == null ? null : key.getBytes(UTF_8), value);
  }

  static String header(ProducerRecord<byte[], byte[]> reply, String name) {
    return new String(reply.headers().lastHeader(name).value(), UTF_8);
  }

  static MockConsumer<byte[], byte[]> consumer() {
    MockConsumer<byte[], byte[]> consumer = new MockConsumer<>("earliest");
    consumer.subscribe(List.of(FITTINGS));
    consumer.rebalance(List.of(FIRST));
    consumer.updateBeginningOffsets(Map.of(FIRST, 0L));
    return consumer;
  }

  static MockProducer<byte[], byte[]> producer() {
    MockProducer<byte[], byte[]> producer =
        new MockProducer<>(true, null, new ByteArraySerializer(), new ByteArraySerializer());
    producer.initTransactions();
    return producer;
  }

  private record Named() implements Settings.Topics {
    @Override
    public String fittings() {
      return FITTINGS;
    }

    @Override
    public String answers() {
      return ANSWERS;
    }

    @Override
    public String setAside() {
      return SET_ASIDE;
    }
  }
}
