package easewright.fuzz;

import static org.junit.jupiter.api.Assertions.fail;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Checks that work grows no faster than the text. A text four times as long takes four times the
 * work where work is linear and sixteen times where it is quadratic.
 *
 * <p>Ordinary tests count the bytes that reading allocates, which are the same on every machine.
 * They miss a loop that allocates nothing; so fuzzing (JAZZER_FUZZ) also takes the CPU time.
 */
public final class LinearTime {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
  private static final boolean FUZZING = System.getenv("JAZZER_FUZZ") != null;

  /** Between four and sixteen, with room for lists that double their arrays as they grow. */
  private static final double MOST_RATIO_OF_BYTES = 5.8;

  /** Below this, fixed costs hide how work grows. */
  private static final long FLOOR_BYTES = 2_000_000;

  private static final double MOST_RATIO_OF_TIME = 8;

  /** The fuzzer's own counting makes everything some ten times as slow. */
  private static final long FLOOR_NANOS = 2_000_000_000;

  private static final int RUNS = 12;

  private LinearTime() {}

  /**
   * Fails when reading the text, repeated up to a length, takes much more than four times the work
   * of reading a quarter of that.
   *
   * @param longest as many characters as the service takes
   */
  public static void check(String text, int longest, Consumer<String> reading) {
    if (text.isEmpty() || text.length() > longest / 4) {
      return;
    }
    String once = text.repeat(longest / 4 / text.length());
    compare(once, reading, THREADS::getCurrentThreadAllocatedBytes, FLOOR_BYTES, "bytes");
    if (FUZZING) {
      compare(once, reading, THREADS::getCurrentThreadCpuTime, FLOOR_NANOS, "ns");
    }
  }

  /** The least of many runs is what the text costs; the rest is the machine's. */
  private static void compare(
      String once, Consumer<String> reading, LongSupplier meter, long floor, String unit) {
    double most = unit.equals("ns") ? MOST_RATIO_OF_TIME : MOST_RATIO_OF_BYTES;
    String fourfold = once.repeat(4);
    long large = cost(fourfold, reading, meter);
    long small = Long.MAX_VALUE;
    for (int run = 0; run < RUNS; run++) {
      if (large < floor) {
        return;
      }
      small = Math.min(small, cost(once, reading, meter));
      large = Math.min(large, cost(fourfold, reading, meter));
      if (large < most * small) {
        return;
      }
    }
    fail(
        "%d characters take %d %s, four times as many %d"
            .formatted(once.length(), small, unit, large));
  }

  /** Of this thread alone, so that other threads count for nothing. */
  private static long cost(String text, Consumer<String> reading, LongSupplier meter) {
    long start = meter.getAsLong();
    reading.accept(text);
    return meter.getAsLong() - start;
  }
}
