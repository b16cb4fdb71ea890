package easewright.desk;

import io.quarkus.qute.TemplateExtension;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Formats times for pages: in UTC, since a server cannot know its reader's time zone. */
@TemplateExtension
final class TimeText {
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm 'UTC'", Locale.ENGLISH)
          .withZone(ZoneOffset.UTC);

  private TimeText() {}

  /** As "25 Nov 2026, 14:30 UTC". */
  static String written(Instant at) {
    return DAY_AND_TIME.format(at);
  }

  /** The same from an ISO 8601 time. */
  static String written(String at) {
    return written(Instant.parse(at));
  }

  /** Whole days since then. */
  static long daysAgo(Instant at) {
    return Duration.between(at, Instant.now()).toDays();
  }

  /** Whole hours since then. */
  static long hoursAgo(Instant at) {
    return Duration.between(at, Instant.now()).toHours();
  }

  /** Whole minutes since then. */
  static long minutesAgo(Instant at) {
    return Duration.between(at, Instant.now()).toMinutes();
  }
}
