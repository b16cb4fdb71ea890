package easewright.deadline;

import java.time.Duration;
import java.util.function.Supplier;

/**
 * The deadline of the current thread's work. It is bound to the thread, since the layers between
 * request and engine have no use for it; without one, time is unlimited.
 */
public final class Deadline {
  private static final ThreadLocal<Long> END = new ThreadLocal<>();
  private static final int SHARES = 5;
  private static final int SHARE_OF_OTHERS = 4;

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
   * Runs, or waits for, what is prepared once for all requests. The thread's time stands still
   * meanwhile, since the request that happens to come first cannot make it shorter.
   */
  public static <T> T uncounted(Supplier<T> preparation) {
    Long end = END.get();
    if (end == null) {
      return preparation.get();
    }
    long began = System.nanoTime();
    END.remove();
    try {
      return preparation.get();
    } finally {
      END.set(end + System.nanoTime() - began);
    }
  }

  /**
   * How long to wait for others, so that time is left to go on without them: this long, or four
   * fifths of what remains of the thread's time where that is less.
   *
   * @param most above nothing
   * @return at least 0
   */
  public static Duration shareOfRest(Duration most) {
    Long end = END.get();
    if (end == null) {
      return most;
    }
    Duration share =
        Duration.ofNanos(Math.max(0, end - System.nanoTime()))
            .multipliedBy(SHARE_OF_OTHERS)
            .dividedBy(SHARES);
    return share.compareTo(most) < 0 ? share : most;
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
