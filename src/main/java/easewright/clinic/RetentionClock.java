package easewright.clinic;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * The clock for retention: the system clock without unconfirmed leaps forward. The service cannot
 * distinguish a wrong clock from a long downtime, and data deleted by mistake is lost for good. So
 * time counts only as the store sees it pass, in steps of at most a week; a longer step is held
 * back until the clock returns or the operator confirms it.
 */
final class RetentionClock {
  /** Longest downtime that needs no confirmation. */
  static final Duration LONGEST_STEP = Duration.ofDays(7);

  private static final Duration CHECK_INTERVAL = Duration.ofHours(1);

  private final Clock clock;
  private final LocalDate rightOn;
  private final StoreNews news;

  /**
   * @param clock measures the steps
   * @param rightOn a day on which the clock is confirmed to be right, in UTC; null if unconfirmed
   */
  RetentionClock(Clock clock, LocalDate rightOn, StoreNews news) {
    this.clock = clock;
    this.rightOn = rightOn;
    this.news = news;
  }

  private record Row(long seenMs, long heldMs) {}

  /** The time now, in milliseconds since 1970; the time seen is stored once an hour. */
  long millis(Handle handle) {
    long now = clock.millis();
    Row row = row(handle);
    if (now < row.seenMs || now - row.seenMs >= CHECK_INTERVAL.toMillis()) {
      row = step(handle, now);
    }
    return now - row.heldMs;
  }

  private static Row row(Handle handle) {
    return handle
        .createQuery("select seen_ms, held_ms from retention_clock")
        .map((row, context) -> new Row(row.getLong("seen_ms"), row.getLong("held_ms")))
        .one();
  }

  /** The time held back; usually empty. */
  Optional<Duration> held(Handle handle) {
    return Optional.of(row(handle).heldMs).filter(held -> held > 0).map(Duration::ofMillis);
  }

  private Row step(Handle handle, long now) {
    handle.createQuery("select id from retention_clock <lock>").mapTo(Integer.class).one();
    Row before = row(handle);
    long seen = before.seenMs == 0 ? lastWrite(handle, now) : before.seenMs;
    long step = now - seen;
    boolean leap = step > LONGEST_STEP.toMillis();
    long held = Math.max(0, before.heldMs + (leap || step < 0 ? step : 0));
    if (isConfirmed(now)) {
      held = 0;
    }
    handle
        .createUpdate("update retention_clock set seen_ms = :seen, held_ms = :held")
        .bind("seen", now)
        .bind("held", held)
        .execute();
    if (leap && held > 0) {
      news.clockHeld(Duration.ofMillis(held));
    }
    return new Row(now, held);
  }

  /** A store that retention never checked has at least been written to. */
  private static long lastWrite(Handle handle, long now) {
    return handle
        .createQuery("select max(done_ms) from audit")
        .mapTo(Long.class)
        .findOne()
        .orElse(now);
  }

  private boolean isConfirmed(long now) {
    if (rightOn == null) {
      return false;
    }
    Instant from = rightOn.atStartOfDay().toInstant(ZoneOffset.UTC);
    Instant until = from.plus(LONGEST_STEP);
    return now >= from.toEpochMilli() && now < until.toEpochMilli();
  }
}
