package easewright.clinic;

/** Nothing of this id is in the caller's clinic, whether or not another clinic has it. */
public final class NotHere extends RuntimeException {
  public NotHere() {
    super(null, null, false, false);
  }
}
