package easewright.clinic;

/** The key is valid, but does not permit this. */
public final class NotAllowed extends RuntimeException {
  NotAllowed() {
    super(null, null, false, false);
  }
}
