package easewright.clinic;

/** The clinic's last organiser key cannot be revoked: nobody could enter as organiser again. */
public final class LastKey extends RuntimeException {
  LastKey() {
    super(null, null, false, false);
  }
}
