package easewright.access;

/** Opening clinics is disabled on this service. */
public final class NoFounding extends RuntimeException {
  NoFounding() {
    super(null, null, false, false);
  }
}
