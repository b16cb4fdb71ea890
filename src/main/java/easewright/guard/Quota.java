package easewright.guard;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import io.quarkus.runtime.configuration.DurationConverter;
import java.time.Duration;

/**
 * How often each client may do something. Inactive clients are forgotten, and at most {@value
 * #MOST_CLIENTS} are kept, so memory stays bounded however many clients there are.
 */
final class Quota {
  private static final int MOST_CLIENTS = 20_000;

  private final String name;
  private final long most;
  private final Duration window;
  private final Cache<String, Bucket> buckets;

  /**
   * @param name the name used in headers
   * @param written the count and its period, such as "30 in 1H"
   * @throws IllegalArgumentException if it is written otherwise
   */
  Quota(String name, String written) {
    String[] parts = written.split(" in ");
    if (parts.length != 2) {
      throw new IllegalArgumentException(
          "easewright.limit." + name + " is to be like \"30 in 1H\", not " + written + ".");
    }
    this.name = name;
    this.most = Long.parseLong(parts[0].strip());
    this.window = DurationConverter.parseDuration(parts[1].strip());
    this.buckets =
        Caffeine.newBuilder().maximumSize(MOST_CLIENTS).expireAfterAccess(window).build();
  }

  /** Consumes one, unless none is left. */
  ConsumptionProbe count(String client) {
    return bucket(client).tryConsumeAndReturnRemaining(1);
  }

  /** Rounds up to whole seconds. */
  static long seconds(long nanos) {
    return (nanos + 999_999_999) / 1_000_000_000;
  }

  /** Value of the header {@code RateLimit-Policy}. */
  String policy() {
    return "\"%s\";q=%d;w=%d".formatted(name, most, window.toSeconds());
  }

  /** Value of the header {@code RateLimit}. */
  String left(long remaining, long secondsToWait) {
    return "\"%s\";r=%d;t=%d".formatted(name, remaining, secondsToWait);
  }

  private Bucket bucket(String client) {
    return buckets.get(
        client,
        unseen ->
            Bucket.builder()
                .addLimit(limit -> limit.capacity(most).refillGreedy(most, window))
                .build());
  }
}
