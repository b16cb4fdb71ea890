package easewright.clinic;

/** The key is known, but not for this. */
public final class NotAllowed extends RuntimeException {
  NotAllowed() {
    super(null, null, false, false);
  }
}
