package easewright.pattern;

/** A part of a sheet that cannot be as stated, by the key of the sentence that says so. */
final class SheetRefusal extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  /**
   * Refuses a part.
   *
   * @param key an entry of {@code faults.yaml} with a problem
   */
  SheetRefusal(String key) {
    super(key);
  }

  /** The key of the sentence. */
  String key() {
    return getMessage();
  }
}
