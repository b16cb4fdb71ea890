package easewright.deadline;

import java.time.Duration;
import java.util.function.Supplier;

/**
 * The deadline of the current thread's work. It is bound to the thread, since the layers between
 * request and engine have no use for it; without one, time is unlimited.
 */
public final class Deadline {
  private static final ThreadLocal<Long> END = new ThreadLocal<>();

  private Deadline() {}

  /**
   * Runs work that aborts when its time is up. Nested work keeps the outer deadline.
   *
   * @throws DeadlinePassed if it aborted
   */
  public static <T> T within(Duration most, Supplier<T> work) {
    if (END.get() != null) {
      return work.get();
    }
    END.set(System.nanoTime() + most.toNanos());
    try {
      return work.get();
    } finally {
      END.remove();
    }
  }

  /**
   * Aborts if the time is up; costs some tens of nanoseconds.
   *
   * @throws DeadlinePassed if it is
   */
  public static void check() {
    Long end = END.get();
    if (end != null && System.nanoTime() - end > 0) {
      throw new DeadlinePassed();
    }
  }
}
