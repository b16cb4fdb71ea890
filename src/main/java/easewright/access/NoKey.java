package easewright.access;

/** A required key is missing or invalid. */
public final class NoKey extends RuntimeException {
  NoKey() {
    super(null, null, false, false);
  }
}
