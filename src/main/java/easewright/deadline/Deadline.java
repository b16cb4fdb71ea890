package easewright.deadline;

import java.time.Duration;
import java.util.function.Supplier;

/**
 * The time by which the work of the current thread has to be done. It goes along with the thread,
 * since the layers between request and engine have no use for it; without one, work takes as long
 * as it takes.
 */
public final class Deadline {
  private static final ThreadLocal<Long> END = new ThreadLocal<>();

  private Deadline() {}

  /**
   * Does some work that gives up when its time is over. Work within work keeps the outer's time.
   *
   * @throws DeadlinePassed when it gave up
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
   * Gives up if the time is over; costs some tens of nanoseconds.
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
