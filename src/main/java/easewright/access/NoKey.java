package easewright.access;

/** No key was sent where one is needed, or none that opens anything. */
public final class NoKey extends RuntimeException {
  NoKey() {
    super(null, null, false, false);
  }
}
