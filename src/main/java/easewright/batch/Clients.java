package easewright.batch;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.apache.kafka.clients.CommonClientConfigs;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.CooperativeStickyAssignor;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/** Opens the Kafka clients of a worker. */
final class Clients {
  /**
   * Defaults that may be overridden. A transaction is open only while sending, so one left open by
   * a killed worker may time out soon.
   */
  private static final Map<String, Object> USUAL =
      Map.of(
          ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG, 10_000,
          ConsumerConfig.MAX_POLL_RECORDS_CONFIG, 100,
          ConsumerConfig.FETCH_MAX_BYTES_CONFIG, 8 * 1024 * 1024,
          ProducerConfig.COMPRESSION_TYPE_CONFIG, "lz4",
          // The topic decides what is too large, after compression.
          ProducerConfig.MAX_REQUEST_SIZE_CONFIG, 16 * 1024 * 1024,
          ProducerConfig.TRANSACTION_TIMEOUT_CONFIG, 20_000,
          ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, 15_000,
          CommonClientConfigs.REQUEST_TIMEOUT_MS_CONFIG, 10_000,
          CommonClientConfigs.DEFAULT_API_TIMEOUT_MS_CONFIG, 10_000,
          ProducerConfig.MAX_BLOCK_MS_CONFIG, 10_000);

  private final Settings settings;
  private final Properties chosen = new Properties();

  /**
   * @throws UncheckedIOException if the client settings file cannot be read
   */
  Clients(Settings settings) {
    this.settings = settings;
    settings.clientConfig().ifPresent(this::read);
  }

  private void read(Path file) {
    try (Reader text = Files.newBufferedReader(file)) {
      chosen.load(text);
    } catch (IOException e) {
      throw new UncheckedIOException("easewright.batch.client-config can't be read: " + file, e);
    }
  }

  /**
   * Joins the group.
   *
   * @param worker its unique name; anything an earlier exchange of this name left uncommitted is
   *     aborted
   * @throws org.apache.kafka.common.KafkaException if the broker cannot be reached or refuses, or a
   *     topic does not exist
   */
  Exchange open(String worker, Answering answering, Tally tally) {
    Consumer<byte[], byte[]> consumer = null;
    Producer<byte[], byte[]> producer = null;
    try {
      consumer = new KafkaConsumer<>(consumerSettings());
      String fittings = settings.topic().fittings();
      for (String topic :
          List.of(fittings, settings.topic().answers(), settings.topic().setAside())) {
        if (consumer.partitionsFor(topic).isEmpty()) {
          throw new UnknownTopicOrPartitionException("There is no topic " + topic);
        }
      }
      producer = new KafkaProducer<>(producerSettings(worker));
      producer.initTransactions();
      consumer.subscribe(List.of(fittings));
      return new Exchange(consumer, producer, answering, tally, new TopicPartition(fittings, 0));
    } catch (RuntimeException failure) {
      if (producer != null) {
        producer.close(Exchange.CLOSING);
      }
      if (consumer != null) {
        consumer.close();
      }
      throw failure;
    }
  }

  private Properties consumerSettings() {
    Properties all = common();
    all.put(ConsumerConfig.KEY_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    all.put(ConsumerConfig.VALUE_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    all.put(ConsumerConfig.GROUP_ID_CONFIG, settings.group());
    all.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    all.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    all.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    all.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    // Workers that keep their partitions continue while others are reassigned.
    all.put(
        ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG,
        List.of(CooperativeStickyAssignor.class));
    return all;
  }

  private Properties producerSettings(String worker) {
    Properties all = common();
    all.put(ProducerConfig.KEY_SERIALIZER_CLASS_CONFIG, ByteArraySerializer.class);
    all.put(ProducerConfig.VALUE_SERIALIZER_CLASS_CONFIG, ByteArraySerializer.class);
    all.put(ProducerConfig.TRANSACTIONAL_ID_CONFIG, settings.group() + "-" + worker);
    return all;
  }

  private Properties common() {
    Properties all = new Properties();
    all.putAll(USUAL);
    all.putAll(chosen);
    all.put(CommonClientConfigs.BOOTSTRAP_SERVERS_CONFIG, settings.brokers().orElseThrow());
    return all;
  }
}
