package easewright.api;

/** Nobody may open clinics here. */
final class NoFounding extends RuntimeException {
  NoFounding() {
    super(null, null, false, false);
  }
}
