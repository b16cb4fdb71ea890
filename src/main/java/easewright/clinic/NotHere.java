package easewright.clinic;

/** The caller's clinic has nothing with this id; another clinic may or may not. */
public final class NotHere extends RuntimeException {
  public NotHere() {
    super(null, null, false, false);
  }
}
