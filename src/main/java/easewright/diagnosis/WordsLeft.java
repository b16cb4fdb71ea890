package easewright.diagnosis;

/**
 * What a text says that the reader could not judge.
 *
 * @param danger whether some of the words may report a danger and only a person can judge, so that
 *     nothing tighter is advised
 * @param statement whether something stated of the garment was not understood, so that it cannot be
 *     said that nothing is wrong
 */
public record WordsLeft(boolean danger, boolean statement) {
  /** A fitting told without words, or in words that were all understood. */
  public static final WordsLeft NONE = new WordsLeft(false, false);
}
