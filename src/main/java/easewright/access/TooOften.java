package easewright.access;

/** A client exceeded a rate limit. */
public final class TooOften extends RuntimeException {
  private final long secondsToWait;

  /**
   * @param secondsToWait seconds until the client may try again
   */
  public TooOften(long secondsToWait) {
    super(null, null, false, false);
    this.secondsToWait = secondsToWait;
  }

  /** Seconds until the client may try again. */
  public long secondsToWait() {
    return secondsToWait;
  }
}
