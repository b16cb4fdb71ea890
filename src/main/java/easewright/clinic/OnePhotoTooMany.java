package easewright.clinic;

/** A case has as many photos as it may have. */
public final class OnePhotoTooMany extends RuntimeException {
  OnePhotoTooMany() {
    super(null, null, false, false);
  }
}
