package easewright.cloth;

/** Readings of a test that no cloth or elastic could give, or needs that none could meet. */
public final class ImpossibleCloth extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  private final String key;

  /**
   * What is impossible, by the key of the sentence that says so to whoever asked.
   *
   * @param key the sentence's, less its prefix
   */
  ImpossibleCloth(String key) {
    super(key);
    this.key = key;
  }

  /** What is impossible, such as "relaxed-shorter-than-marked". */
  public String key() {
    return key;
  }
}
