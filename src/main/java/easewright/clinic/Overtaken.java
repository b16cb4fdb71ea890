package easewright.clinic;

/** Somebody else was quicker, or has the case; nothing was changed. */
public final class Overtaken extends RuntimeException {
  private final int version;
  private final String holder;

  Overtaken(int version, String holder) {
    super(null, null, false, false);
    this.version = version;
    this.holder = holder;
  }

  /** The version now in force. */
  public int version() {
    return version;
  }

  /** The name of whoever has the case; null when nobody has it, or it is no case. */
  public String holder() {
    return holder;
  }
}
