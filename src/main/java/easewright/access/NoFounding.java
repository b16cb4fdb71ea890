package easewright.access;

/** Nobody may open clinics here. */
public final class NoFounding extends RuntimeException {
  NoFounding() {
    super(null, null, false, false);
  }
}
