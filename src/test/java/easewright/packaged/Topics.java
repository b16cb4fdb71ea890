package easewright.packaged;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.function.Predicate;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AlterConfigOp;
import org.apache.kafka.clients.admin.ConfigEntry;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.config.ConfigResource;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;

/** What a shop does at a broker: makes topics, sends fittings, and reads what was committed. */
public final class Topics {
  private final Broker broker;

  public Topics(Broker broker) {
    this.broker = broker;
  }

  public void make(NewTopic... topics) throws ExecutionException, InterruptedException {
    try (Admin admin = Admin.create(settings())) {
      admin.createTopics(List.of(topics)).all().get();
    }
  }

  /** Lets a topic take no message above a size, in bytes as they are packed. */
  void narrow(String topic, int most) throws ExecutionException, InterruptedException {
    ConfigResource name = new ConfigResource(ConfigResource.Type.TOPIC, topic);
    ConfigEntry size = new ConfigEntry("max.message.bytes", Integer.toString(most));
    try (Admin admin = Admin.create(settings())) {
      admin
          .incrementalAlterConfigs(
              Map.of(name, List.of(new AlterConfigOp(size, AlterConfigOp.OpType.SET))))
          .all()
          .get();
    }
  }

  /** How many partitions each member of a group has, as the broker knows it. */
  List<Integer> shares(String group) throws ExecutionException, InterruptedException {
    try (Admin admin = Admin.create(settings())) {
      return admin
          .describeConsumerGroups(List.of(group))
          .describedGroups()
          .get(group)
          .get()
          .members()
          .stream()
          .map(member -> member.assignment().topicPartitions().size())
          .toList();
    }
  }

  /** Sends messages, packed in a way for which the worker needs native code. */
  public void send(Collection<ProducerRecord<String, byte[]>> messages) {
    Properties settings = settings();
    settings.put("compression.type", "zstd");
    try (Producer<String, byte[]> producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer())) {
      messages.forEach(producer::send);
      producer.flush();
    }
  }

  /** Reads a topic from its beginning until there is enough, and then what else is there. */
  List<ConsumerRecord<String, byte[]>> committed(
      String topic, Duration patience, Predicate<List<ConsumerRecord<String, byte[]>>> enough) {
    Properties settings = settings();
    settings.put("isolation.level", "read_committed");
    List<ConsumerRecord<String, byte[]>> read = new ArrayList<>();
    try (KafkaConsumer<String, byte[]> consumer =
        new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer())) {
      List<TopicPartition> all =
          consumer.partitionsFor(topic).stream()
              .map(partition -> new TopicPartition(topic, partition.partition()))
              .toList();
      consumer.assign(all);
      consumer.seekToBeginning(all);
      long end = System.nanoTime() + patience.toNanos();
      while (!enough.test(read) && System.nanoTime() < end) {
        consumer.poll(Duration.ofMillis(200)).forEach(read::add);
      }
      Map<TopicPartition, Long> ends = consumer.endOffsets(all);
      while (ends.entrySet().stream().anyMatch(e -> consumer.position(e.getKey()) < e.getValue())
          && System.nanoTime() < end) {
        consumer.poll(Duration.ofMillis(200)).forEach(read::add);
      }
    }
    return read;
  }

  private Properties settings() {
    Properties settings = new Properties();
    settings.put("bootstrap.servers", broker.address());
    return settings;
  }
}
