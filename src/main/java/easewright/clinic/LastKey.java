package easewright.clinic;

/** The clinic's last organiser's key can't be revoked: nobody could enter as organiser again. */
public final class LastKey extends RuntimeException {
  LastKey() {
    super(null, null, false, false);
  }
}
