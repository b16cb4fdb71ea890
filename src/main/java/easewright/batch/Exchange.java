package easewright.batch;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.kafka.clients.consumer.CloseOptions;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.RecordTooLargeException;

/**
 * Consumes messages and produces replies. Replies and consumer offsets are committed in one
 * transaction (KIP-98), which a worker that lost its partitions cannot commit (KIP-447): so a
 * reader of committed messages sees exactly one reply to each message.
 *
 * <p>An exception leaves it unusable: close it then; the next worker consumes uncommitted messages
 * again.
 */
final class Exchange implements AutoCloseable {
  /** Maximum size of a transaction: replies are held in memory until it is committed. */
  private static final int MOST_BYTES = 4 * 1024 * 1024;

  private static final Duration WAIT = Duration.ofSeconds(1);
  private static final Duration IDLE_BEFORE_ASKING = Duration.ofSeconds(5);
  static final Duration CLOSING = Duration.ofSeconds(5);

  private final Consumer<byte[], byte[]> consumer;
  private final Producer<byte[], byte[]> producer;
  private final Answering answering;
  private final Tally tally;
  private final TopicPartition first;
  private final List<Replied> pending = new ArrayList<>();
  private long pendingBytes;
  private long lastContactNs = System.nanoTime();

  private record Replied(
      ConsumerRecord<byte[], byte[]> taken, ProducerRecord<byte[], byte[]> reply) {}

  /**
   * @param consumer subscribed, its offsets committed only here
   * @param producer with transactions initialised
   * @param first an existing partition, for probing the broker
   */
  Exchange(
      Consumer<byte[], byte[]> consumer,
      Producer<byte[], byte[]> producer,
      Answering answering,
      Tally tally,
      TopicPartition first) {
    this.consumer = consumer;
    this.producer = producer;
    this.answering = answering;
    this.tally = tally;
    this.first = first;
  }

  /**
   * Waits at most a second for messages and replies to all that arrived.
   *
   * @throws KafkaException if the broker cannot be reached, or the worker's partitions were
   *     reassigned
   */
  void turn() {
    ConsumerRecords<byte[], byte[]> taken = consumer.poll(WAIT);
    if (taken.isEmpty()) {
      askIfSilent();
      return;
    }
    // Computes all replies before sending: so a worker that dies while answering leaves no open
    // transaction to block readers and successors.
    for (ConsumerRecord<byte[], byte[]> message : taken) {
      hold(message, answering.reply(message));
      if (pendingBytes > MOST_BYTES) {
        commit();
      }
    }
    commit();
    lastContactNs = System.nanoTime();
  }

  private void hold(ConsumerRecord<byte[], byte[]> message, ProducerRecord<byte[], byte[]> reply) {
    pending.add(new Replied(message, reply));
    pendingBytes += reply.value() == null ? 0 : reply.value().length;
  }

  private void commit() {
    if (pending.isEmpty()) {
      return;
    }
    Set<Replied> tooLarge = ConcurrentHashMap.newKeySet();
    try {
      send(tooLarge);
    } catch (KafkaException failure) {
      if (tooLarge.isEmpty() || tooLarge.stream().anyMatch(this::isSetAside)) {
        throw failure;
      }
      producer.abortTransaction();
      pending.replaceAll(
          replied ->
              tooLarge.contains(replied)
                  ? new Replied(replied.taken(), answering.tooLarge(replied.taken()))
                  : replied);
      commit();
      return;
    }
    pending.forEach(replied -> tally.add(isSetAside(replied)));
    pending.clear();
    pendingBytes = 0;
  }

  private void send(Set<Replied> tooLarge) {
    Map<TopicPartition, OffsetAndMetadata> upTo = new HashMap<>();
    producer.beginTransaction();
    for (Replied replied : pending) {
      ConsumerRecord<byte[], byte[]> taken = replied.taken();
      upTo.put(
          new TopicPartition(taken.topic(), taken.partition()),
          new OffsetAndMetadata(taken.offset() + 1));
      producer.send(
          replied.reply(),
          (sent, failure) -> {
            if (failure instanceof RecordTooLargeException) {
              tooLarge.add(replied);
            }
          });
    }
    producer.flush();
    producer.sendOffsetsToTransaction(upTo, consumer.groupMetadata());
    producer.commitTransaction();
  }

  private boolean isSetAside(Replied replied) {
    return answering.isSetAside(replied.reply());
  }

  /** A consumer waits silently for an unreachable broker; a probe fails. */
  private void askIfSilent() {
    if (System.nanoTime() - lastContactNs > IDLE_BEFORE_ASKING.toNanos()) {
      Set<TopicPartition> mine = new HashSet<>(consumer.assignment());
      mine.add(first);
      consumer.endOffsets(mine);
      lastContactNs = System.nanoTime();
    }
  }

  /** Leaves the group, so that others take over at once. */
  @Override
  public void close() {
    try {
      producer.close(CLOSING);
    } finally {
      consumer.close(CloseOptions.timeout(CLOSING));
    }
  }
}
