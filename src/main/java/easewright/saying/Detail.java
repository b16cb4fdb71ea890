package easewright.saying;

/** How much of an answer its JSON holds. */
public enum Detail {
  /** What a reply needs. */
  LEAN,
  /** All that led to it, too. */
  FULL;

  /** The query parameter that chooses it. */
  public static final String PARAMETER = "detail";

  /**
   * Reads the query parameter; lean where it is missing.
   *
   * @throws BadParameter for any other word
   */
  public static Detail of(String word) {
    return QueryWord.of(PARAMETER, word, LEAN);
  }
}
