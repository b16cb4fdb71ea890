package easewright.clinic;

/** Somebody else was quicker, or holds the case; nothing was changed. */
public final class Overtaken extends RuntimeException {
  private final int version;
  private final String holder;

  Overtaken(int version, String holder) {
    super(null, null, false, false);
    this.version = version;
    this.holder = holder;
  }

  /** The current version. */
  public int version() {
    return version;
  }

  /** The name of the case's holder; null if there is none, or it is not a case. */
  public String holder() {
    return holder;
  }
}
