package easewright.saying;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

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
    if (word == null) {
      return usual;
    }
    return Arrays.stream(values())
        .filter(length -> length.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new BadParameter(PARAMETER, List.of(SHORT.word(), LONG.word())));
  }

  private String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
