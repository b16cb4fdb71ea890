package easewright.access;

/** Something was done too often from one place. */
public final class TooOften extends RuntimeException {
  private final long secondsToWait;

  /** Until it may be done again, seconds. */
  public TooOften(long secondsToWait) {
    super(null, null, false, false);
    this.secondsToWait = secondsToWait;
  }

  /** After how many seconds it may be tried again. */
  public long secondsToWait() {
    return secondsToWait;
  }
}
