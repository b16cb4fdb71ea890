package easewright.bench;

import java.util.Map;
import java.util.TreeMap;
import org.HdrHistogram.Histogram;

/**
 * How a load was answered.
 *
 * @param byStatus how many answers of each status
 * @param failed calls without an answer, by the kind of failure; "NeverSent" are those of a steady
 *     rate that found no connection free before its end
 * @param wrong answers that were not as they should be
 * @param served latencies of answers below 400, µs
 * @param refused latencies of the other answers, µs
 * @param seconds from the first call to the last answer
 */
public record Outcome(
    Map<Integer, Long> byStatus,
    Map<String, Long> failed,
    long wrong,
    Histogram served,
    Histogram refused,
    double seconds) {

  static Outcome none() {
    return new Outcome(new TreeMap<>(), new TreeMap<>(), 0, histogram(), histogram(), 0);
  }

  /** From a microsecond to a minute, two digits exact. */
  static Histogram histogram() {
    return new Histogram(1, 60_000_000L, 2);
  }

  /** How many answers had a status. */
  public long count(int status) {
    return byStatus.getOrDefault(status, 0L);
  }

  /** Answers below 400 a second. */
  public double servedPerSecond() {
    return served.getTotalCount() / seconds;
  }

  /** The latency that a share of the served answers kept to, ms; NaN when none was served. */
  public double servedMs(double percentile) {
    return served.getTotalCount() == 0
        ? Double.NaN
        : served.getValueAtPercentile(percentile) / 1000.0;
  }

  /** Both together, as if they had been one load. */
  Outcome and(Outcome other) {
    Map<Integer, Long> statuses = new TreeMap<>(byStatus);
    other.byStatus.forEach((status, count) -> statuses.merge(status, count, Long::sum));
    Map<String, Long> failures = new TreeMap<>(failed);
    other.failed.forEach((kind, count) -> failures.merge(kind, count, Long::sum));
    Histogram allServed = served.copy();
    allServed.add(other.served);
    Histogram allRefused = refused.copy();
    allRefused.add(other.refused);
    return new Outcome(
        statuses,
        failures,
        wrong + other.wrong,
        allServed,
        allRefused,
        Math.max(seconds, other.seconds));
  }

  /** One line to print. */
  @Override
  public String toString() {
    return "%.0f served/s, p50 %.1f ms, p99 %.1f ms, max %.1f ms; statuses %s, failed %s, wrong %d; refusals p99 %.1f ms"
        .formatted(
            servedPerSecond(),
            servedMs(50),
            servedMs(99),
            servedMs(100),
            byStatus,
            failed,
            wrong,
            refused.getTotalCount() == 0 ? Double.NaN : refused.getValueAtPercentile(99) / 1000.0);
  }
}
