package easewright.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.Supplier;
import org.apache.kafka.clients.consumer.MockConsumer;
import org.apache.kafka.clients.producer.MockProducer;
import org.apache.kafka.common.errors.TimeoutException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A worker ends only when it is stopped. */
@Timeout(60)
class WorkerTest {
  private final Tally tally = new Tally();

  @Test
  void a_worker_restarts_after_every_failure_and_finishes_its_messages_when_stopped()
      throws InterruptedException {
    MockConsumer<byte[], byte[]> expelled = Bench.consumer();
    expelled.setPollException(new org.apache.kafka.common.KafkaException("expelled"));
    MockConsumer<byte[], byte[]> consumer = Bench.consumer();
    consumer.addRecord(Bench.message(0, "a", Bench.ONE_SIGN));
    MockProducer<byte[], byte[]> producer = Bench.producer();
    Deque<Supplier<Exchange>> openings =
        new ArrayDeque<>(
            List.of(
                () -> {
                  throw new TimeoutException("no broker");
                },
                () -> exchange(expelled, Bench.producer()),
                () -> exchange(consumer, producer)));
    Worker worker = new Worker(() -> openings.pop().get());
    assertEquals("starting", worker.trouble());
    Thread thread = new Thread(worker);
    thread.start();

    while (worker.trouble() != null) {
      Thread.sleep(5);
    }
    worker.stop();
    thread.join();

    assertEquals(1, tally.answered());
    assertEquals(1, producer.commitCount());
    assertTrue(expelled.closed());
    assertTrue(consumer.closed());
    assertEquals("stopped", worker.trouble());
  }

  @Test
  void a_worker_without_a_broker_reports_its_fault_and_stops_during_a_pause()
      throws InterruptedException {
    Worker worker =
        new Worker(
            () -> {
              throw new TimeoutException("no broker");
            });
    Thread thread = new Thread(worker);
    thread.start();

    while (!worker.trouble().equals("TimeoutException")) {
      Thread.sleep(5);
    }
    worker.stop();
    thread.join(20_000);

    assertFalse(thread.isAlive());
  }

  private Exchange exchange(
      MockConsumer<byte[], byte[]> consumer, MockProducer<byte[], byte[]> producer) {
    return new Exchange(consumer, producer, Bench.answering(), tally, Bench.FIRST);
  }
}
