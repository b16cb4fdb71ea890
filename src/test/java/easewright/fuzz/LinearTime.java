package easewright.fuzz;

import static org.junit.jupiter.api.Assertions.fail;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.function.Consumer;

/**
 * Whether time grows no faster than the text. A text four times as long takes four times as long
 * where time is linear and sixteen times where it is quadratic; eight lies between.
 */
public final class LinearTime {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final double MOST_RATIO = 8;

  /**
   * What takes less harms nobody and cannot be told from noise. While searching, the fuzzer's own
   * counting makes everything some ten times as slow.
   */
  private static final long FLOOR_NANOS =
      System.getenv("JAZZER_FUZZ") == null ? 200_000_000 : 2_000_000_000;

  private LinearTime() {}

  /**
   * Fails when reading the text, repeated up to a length, takes over eight times as long as reading
   * a quarter of that.
   *
   * @param longest as many characters as the service takes
   */
  public static void check(String text, int longest, Consumer<String> reading) {
    if (text.isEmpty() || text.length() > longest / 4) {
      return;
    }
    int times = longest / 4 / text.length();
    String once = text.repeat(times);
    String fourfold = once.repeat(4);
    long large = nanos(fourfold, reading);
    long small = Long.MAX_VALUE;
    // The least of many runs is what the text costs; the rest is the machine's.
    for (int run = 0; run < 12; run++) {
      if (large < FLOOR_NANOS) {
        return;
      }
      small = Math.min(small, nanos(once, reading));
      large = Math.min(large, nanos(fourfold, reading));
      if (large < MOST_RATIO * small) {
        return;
      }
    }
    fail(
        "%d characters take %d µs, four times as many %d µs"
            .formatted(once.length(), small / 1000, large / 1000));
  }

  /** Of this thread alone, so that a busy machine counts for little. */
  private static long nanos(String text, Consumer<String> reading) {
    long start = THREADS.getCurrentThreadCpuTime();
    reading.accept(text);
    return THREADS.getCurrentThreadCpuTime() - start;
  }
}
