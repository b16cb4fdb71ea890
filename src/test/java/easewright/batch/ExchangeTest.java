package easewright.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import org.apache.kafka.clients.consumer.CommitFailedException;
import org.apache.kafka.clients.consumer.ConsumerGroupMetadata;
import org.apache.kafka.clients.consumer.MockConsumer;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.Callback;
import org.apache.kafka.clients.producer.MockProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.ProducerFencedException;
import org.apache.kafka.common.errors.RecordTooLargeException;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.junit.jupiter.api.Test;

/** Answers and consumer offsets are committed together or not at all (KIP-98, KIP-447). */
class ExchangeTest {
  private final MockConsumer<byte[], byte[]> consumer = Bench.consumer();
  private final Tally tally = new Tally();

  private Exchange exchange(MockProducer<byte[], byte[]> producer) {
    return new Exchange(consumer, producer, Bench.answering(), tally, Bench.FIRST);
  }

  @Test
  void answers_and_problems_are_committed_with_the_offset_after_the_last_message() {
    MockProducer<byte[], byte[]> producer = Bench.producer();
    consumer.addRecord(Bench.message(0, "a", Bench.ONE_SIGN));
    consumer.addRecord(Bench.message(1, "b", new byte[] {'{'}));
    consumer.addRecord(Bench.message(2, "c", Bench.ONE_SIGN));

    exchange(producer).turn();

    assertEquals(
        List.of(Bench.ANSWERS, Bench.SET_ASIDE, Bench.ANSWERS),
        producer.history().stream().map(ProducerRecord::topic).toList());
    assertEquals(1, producer.commitCount());
    OffsetAndMetadata upTo =
        producer
            .consumerGroupOffsetsHistory()
            .get(0)
            .get(consumer.groupMetadata().groupId())
            .get(Bench.FIRST);
    assertEquals(3, upTo.offset());
    assertEquals(2, tally.answered());
    assertEquals(1, tally.setAside());
  }

  @Test
  void a_worker_whose_partitions_were_reassigned_commits_nothing_and_reports_it() {
    MockProducer<byte[], byte[]> producer = Bench.producer();
    producer.sendOffsetsToTransactionException = new CommitFailedException();
    consumer.addRecord(Bench.message(0, "a", Bench.ONE_SIGN));
    Exchange exchange = exchange(producer);

    assertThrows(CommitFailedException.class, exchange::turn);

    assertEquals(List.of(), producer.history());
    assertEquals(0, tally.answered());
  }

  @Test
  void a_worker_whose_name_was_taken_over_commits_nothing_and_reports_it() {
    MockProducer<byte[], byte[]> producer = Bench.producer();
    consumer.addRecord(Bench.message(0, "a", Bench.ONE_SIGN));
    Exchange exchange = exchange(producer);
    producer.fenceProducer();

    assertThrows(ProducerFencedException.class, exchange::turn);

    assertEquals(List.of(), producer.history());
  }

  @Test
  void an_answer_too_large_for_its_topic_is_set_aside_and_the_others_are_answered() {
    Narrow producer = new Narrow(Bench.ANSWERS);
    consumer.addRecord(Bench.message(0, "wide", Bench.ONE_SIGN));
    consumer.addRecord(Bench.message(1, "b", Bench.ONE_SIGN));

    exchange(producer).turn();

    assertEquals(
        List.of(Bench.SET_ASIDE, Bench.ANSWERS),
        producer.history().stream().map(ProducerRecord::topic).toList());
    assertEquals(1, tally.setAside());
  }

  @Test
  void a_problem_too_large_for_its_topic_is_a_failure_since_it_cannot_be_reported() {
    Narrow producer = new Narrow(Bench.SET_ASIDE);
    consumer.addRecord(Bench.message(0, "wide", new byte[] {'{'}));
    Exchange exchange = exchange(producer);

    assertThrows(KafkaException.class, exchange::turn);

    assertEquals(List.of(), producer.history());
  }

  @Test
  void closing_leaves_the_group_and_the_broker() {
    MockProducer<byte[], byte[]> producer = Bench.producer();

    exchange(producer).close();

    assertTrue(producer.closed());
    assertTrue(consumer.closed());
  }

  /**
   * Rejects messages with the key "wide" in one topic as too large, and then any commit until the
   * transaction is aborted, like the real one (documentation of {@code KafkaProducer.send}).
   */
  private static final class Narrow extends MockProducer<byte[], byte[]> {
    private final String topic;
    private boolean refused;

    Narrow(String topic) {
      super(true, null, new ByteArraySerializer(), new ByteArraySerializer());
      this.topic = topic;
      initTransactions();
    }

    @Override
    public synchronized Future<RecordMetadata> send(
        ProducerRecord<byte[], byte[]> message, Callback told) {
      if (message.topic().equals(topic) && new String(message.key()).equals("wide")) {
        refused = true;
        RecordTooLargeException failure = new RecordTooLargeException();
        told.onCompletion(null, failure);
        return CompletableFuture.failedFuture(failure);
      }
      return super.send(message, told);
    }

    @Override
    public void sendOffsetsToTransaction(
        Map<TopicPartition, OffsetAndMetadata> upTo, ConsumerGroupMetadata group) {
      if (refused) {
        throw new KafkaException("in error");
      }
      super.sendOffsetsToTransaction(upTo, group);
    }

    @Override
    public void abortTransaction() {
      refused = false;
      super.abortTransaction();
    }
  }
}
