package easewright.saying;

/** How much of an answer is written out. */
public enum ReplyLength {
  /** Under 120 words. */
  SHORT,
  /** With the reasoning. */
  LONG;

  /** The query parameter that chooses it. */
  public static final String PARAMETER = "length";

  /**
   * Reads the query parameter.
   *
   * @param usual the value if the parameter is missing
   * @throws BadParameter for any other word
   */
  public static ReplyLength of(String word, ReplyLength usual) {
    return QueryWord.of(PARAMETER, word, usual);
  }
}
