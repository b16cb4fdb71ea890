package easewright.photo;

/** A file that is not taken as a photo. */
public final class UnusablePhoto extends Exception {
  private final Reason reason;

  /** Why a file is not taken. */
  public enum Reason {
    /** Neither JPEG nor PNG. */
    OF_NO_KIND,
    /** Damaged, or of a rare kind that cannot be decoded. */
    BROKEN,
    /** Another file follows the picture. */
    WITH_MORE,
    /** Too many pixels, or too much work to decode them. */
    TOO_LARGE
  }

  UnusablePhoto(Reason reason) {
    super(reason.name(), null, false, false);
    this.reason = reason;
  }

  /** Why it is not taken. */
  public Reason reason() {
    return reason;
  }
}
