package easewright.batch;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.apache.kafka.common.KafkaException;
import org.jboss.logging.Logger;

/** Keeps an exchange running: when one fails, opens another after a delay, until stopped. */
final class Worker implements Runnable {
  private static final Logger LOG = Logger.getLogger(Worker.class);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(30);
  private static final int MOST_DOUBLINGS = 5;

  private final Supplier<Exchange> opening;
  private final CountDownLatch stopped = new CountDownLatch(1);
  private volatile String trouble = "starting";
  private int failures;

  /**
   * @param opening joins the group
   */
  Worker(Supplier<Exchange> opening) {
    this.opening = opening;
  }

  /** The current fault; null while it works. */
  String trouble() {
    return trouble;
  }

  /** Lets it finish the messages it took, and leave the group. */
  void stop() {
    stopped.countDown();
  }

  @Override
  public void run() {
    while (stopped.getCount() > 0) {
      try (Exchange exchange = opening.get()) {
        while (stopped.getCount() > 0) {
          exchange.turn();
          works();
        }
      } catch (RuntimeException failure) {
        pauseAfter(failure);
      }
    }
    trouble = "stopped";
  }

  private void works() {
    if (trouble != null) {
      LOG.info("A batch worker waits for fittings.");
    }
    trouble = null;
    failures = 0;
  }

  private void pauseAfter(RuntimeException failure) {
    Duration pause = Duration.ofSeconds(1L << Math.min(failures++, MOST_DOUBLINGS));
    pause = pause.compareTo(LONGEST_PAUSE) < 0 ? pause : LONGEST_PAUSE;
    trouble = failure.getClass().getSimpleName();
    if (failure instanceof KafkaException) {
      LOG.warnf(
          "A batch worker begins anew in %d s: %s%s",
          pause.toSeconds(),
          failure,
          failure.getCause() == null ? "" : ", because of " + failure.getCause());
    } else {
      LOG.error("A batch worker begins anew in " + pause.toSeconds() + " s", failure);
    }
    try {
      stopped.await(pause.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException unexpected) {
      Thread.currentThread().interrupt();
      stop();
    }
  }
}
