package easewright.saying;

import java.util.Arrays;
import java.util.Locale;

/** A query parameter that takes one of a few words: the constants of an enum in lower case. */
final class QueryWord {
  private QueryWord() {}

  /**
   * Reads it.
   *
   * @param usual the value if the parameter is missing
   * @throws BadParameter for any other word
   */
  static <E extends Enum<E>> E of(String parameter, String word, E usual) {
    if (word == null) {
      return usual;
    }
    E[] values = usual.getDeclaringClass().getEnumConstants();
    return Arrays.stream(values)
        .filter(value -> word(value).equals(word))
        .findFirst()
        .orElseThrow(
            () -> new BadParameter(parameter, Arrays.stream(values).map(QueryWord::word).toList()));
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
