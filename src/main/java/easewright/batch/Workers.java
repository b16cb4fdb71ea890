package easewright.batch;

import com.fasterxml.jackson.databind.ObjectMapper;
import easewright.answering.FittingService;
import easewright.answering.RuleBookService;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.smallrye.health.api.HealthRegistry;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import org.jboss.logging.Logger;

/**
 * The workers of this process, from start-up to shutdown; without configured brokers there are
 * none, and no Kafka class is loaded.
 */
@Singleton
class Workers {
  private static final Logger LOG = Logger.getLogger(Workers.class);
  private static final Duration STOP = Duration.ofSeconds(30);

  private final Settings settings;
  private final FittingService fittings;
  private final RuleBookService rules;
  private final ObjectMapper json;
  private final HealthRegistry readiness;
  private final List<Worker> workers = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();
  private final Tally tally = new Tally();

  Workers(
      Settings settings,
      FittingService fittings,
      RuleBookService rules,
      ObjectMapper json,
      @Readiness HealthRegistry readiness) {
    this.settings = settings;
    this.fittings = fittings;
    this.rules = rules;
    this.json = json;
    this.readiness = readiness;
  }

  void start(@Observes StartupEvent started) {
    if (settings.brokers().isEmpty()) {
      return;
    }
    Clients clients = new Clients(settings);
    Answering answering =
        new Answering(settings.topic(), fittings::answerWithoutDeadline, rules::ruleBook, json);
    for (int number = 1; number <= settings.workers(); number++) {
      String name = UUID.randomUUID().toString();
      Worker worker = new Worker(() -> clients.open(name, answering, tally));
      Thread thread = new Thread(worker, "batch-worker-" + number);
      thread.setUncaughtExceptionHandler(Workers::end);
      workers.add(worker);
      threads.add(thread);
    }
    readiness.register("batch", this::health);
    threads.forEach(Thread::start);
  }

  /** A worker cannot continue after a virtual-machine error, and its loss must not go unnoticed. */
  private static void end(Thread thread, Throwable error) {
    LOG.fatal("A batch worker broke down, so the process ends", error);
    Quarkus.asyncExit(1);
  }

  private HealthCheckResponse health() {
    List<String> troubles = workers.stream().map(Worker::trouble).filter(Objects::nonNull).toList();
    var health =
        HealthCheckResponse.named("batch")
            .status(troubles.isEmpty())
            .withData("workers", workers.size())
            .withData("answered", tally.answered())
            .withData("setAside", tally.setAside());
    if (!troubles.isEmpty()) {
      health.withData("trouble", String.join(", ", troubles));
    }
    return health.build();
  }

  void stop(@Observes ShutdownEvent stopped) throws InterruptedException {
    workers.forEach(Worker::stop);
    long end = System.nanoTime() + STOP.toNanos();
    for (Thread thread : threads) {
      // Another worker consumes again what is not committed by then.
      thread.join(Math.max(1, (end - System.nanoTime()) / 1_000_000));
    }
  }
}
