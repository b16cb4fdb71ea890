package easewright.saying;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

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
    if (word == null) {
      return LEAN;
    }
    return Arrays.stream(values())
        .filter(detail -> detail.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new BadParameter(PARAMETER, List.of(LEAN.word(), FULL.word())));
  }

  private String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
