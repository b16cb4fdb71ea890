package easewright.api;

/** No key was sent where one is needed, or none that opens anything. */
final class NoKey extends RuntimeException {
  NoKey() {
    super(null, null, false, false);
  }
}
