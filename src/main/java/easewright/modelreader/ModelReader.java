package easewright.modelreader;

import dev.failsafe.CircuitBreaker;
import easewright.deadline.Deadline;
import easewright.modelreader.ModelAnswer.Kept;
import easewright.modelreader.ModelCall.Failed;
import java.io.IOException;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.LongAdder;

/**
 * Reads posts by a language model. Whatever goes wrong, the caller gets nothing and goes on without
 * it; how often is counted, without a word of the post. Safe to share between threads.
 */
public final class ModelReader {
  private static final System.Logger LOG = System.getLogger(ModelReader.class.getName());

  private static final int FAILURES_IN_A_ROW = 5;
  private static final Duration REST = Duration.ofSeconds(30);

  private final ModelSettings settings;
  private final ModelCall call;
  private final Semaphore slots;
  private final CircuitBreaker<Object> breaker;
  private final Map<ModelOutcome, LongAdder> outcomes = new EnumMap<>(ModelOutcome.class);
  private final LongAdder dropped = new LongAdder();

  /** Sends posts to the address of these settings from now on. */
  public ModelReader(ModelSettings settings) {
    this(settings, REST);
  }

  /**
   * @param rest how long a model that failed is left alone
   */
  ModelReader(ModelSettings settings, Duration rest) {
    this.settings = settings;
    this.call = new ModelCall(settings);
    this.slots = new Semaphore(settings.atOnce());
    this.breaker =
        CircuitBreaker.builder()
            .withFailureThreshold(FAILURES_IN_A_ROW)
            .withDelay(rest)
            .onOpen(
                any -> LOG.log(System.Logger.Level.WARNING, "The language model keeps failing."))
            .build();
    for (ModelOutcome one : ModelOutcome.values()) {
      outcomes.put(one, new LongAdder());
    }
    LOG.log(System.Logger.Level.INFO, "Posts are sent to the language model " + settings + ".");
    if (settings.isOpenToReaders()) {
      LOG.log(System.Logger.Level.WARNING, "Posts go to the language model unencrypted.");
    }
  }

  /**
   * What the model reads in a post.
   *
   * @param asked the question that the post replies to, or null
   * @param prompt the names of the rule book in force
   * @return nothing where it cannot be asked or does not answer properly in time
   */
  public Optional<ModelReading> read(String post, String asked, ModelPrompt prompt) {
    if (!slots.tryAcquire()) {
      return none(ModelOutcome.BUSY);
    }
    try {
      if (!breaker.tryAcquirePermit()) {
        return none(ModelOutcome.RESTING);
      }
      return ask(post, asked, prompt);
    } finally {
      slots.release();
    }
  }

  /** How often asking ended so. */
  public long count(ModelOutcome outcome) {
    return outcomes.get(outcome).sum();
  }

  /** How many items of answers were thrown away. */
  public long dropped() {
    return dropped.sum();
  }

  private Optional<ModelReading> ask(String post, String asked, ModelPrompt prompt) {
    boolean answered = false;
    try {
      byte[] request = prompt.request(settings.name(), post, asked);
      byte[] body = call.send(request, Deadline.shareOfRest(settings.timeout()));
      Optional<Kept> kept = ModelAnswer.read(body, post, prompt);
      if (kept.isEmpty()) {
        return none(ModelOutcome.GARBLED);
      }
      answered = true;
      dropped.add(kept.get().dropped());
      outcomes.get(ModelOutcome.READ).increment();
      return Optional.of(kept.get().reading());
    } catch (Failed failed) {
      return none(failed.outcome());
    } catch (IOException garbled) {
      return none(ModelOutcome.GARBLED);
    } finally {
      if (answered) {
        breaker.recordSuccess();
      } else {
        breaker.recordFailure();
      }
    }
  }

  private Optional<ModelReading> none(ModelOutcome outcome) {
    outcomes.get(outcome).increment();
    return Optional.empty();
  }
}
