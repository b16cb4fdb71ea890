package easewright.size;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A size label as printed: "34 B", "75DD", "C75", "3".
 *
 * @param number the band number
 * @param letter the cup letter as written; null if there is none
 */
public record SizeLabel(int number, String letter) {
  private static final Pattern BAND_FIRST = Pattern.compile("(\\d{1,3})\\s*([A-Za-z]{1,3})?");
  private static final Pattern CUP_FIRST = Pattern.compile("([A-Za-z]{1,3})\\s*(\\d{1,3})");
  private static final Pattern LETTER = Pattern.compile("[A-Za-z]{1,3}");

  /** Italian labels count bands by Roman numerals (common practice). */
  private static final Pattern ROMAN =
      Pattern.compile("(I{1,3}|IV|VI{0,3}|IX)(?:\\s+([A-Za-z]{1,3}))?");

  /** What names a size of some pattern: a number, letters as XS and L, or a word for them. */
  private static final Pattern LIKE =
      Pattern.compile(
          "\\d|\\b(?:x{0,6}[sml]|small|medium|large|petite|plus|tall|one size|free size)\\b");

  /** The longest name made of other letters: a cup, or a Roman numeral with one. */
  private static final int FEW = 5;

  private static final List<String> NUMERALS =
      List.of("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX");

  /**
   * Parses what a label prints: one size, or two with a slash between them that share a number or a
   * letter or neither ("34DD/E", "70/75 B", "75E/34DD").
   *
   * @return every size it names in its order; none if it is no label
   */
  public static List<SizeLabel> parse(String text) {
    List<String> halves = Stream.of(text.split("/", -1)).map(String::strip).toList();
    Optional<SizeLabel> first = one(halves.get(0));
    if (halves.size() == 1) {
      return first.stream().toList();
    }
    if (halves.size() > 2 || first.isEmpty()) {
      return List.of();
    }
    Optional<SizeLabel> second =
        LETTER.matcher(halves.get(1)).matches() && first.get().letter() != null
            ? Optional.of(new SizeLabel(first.get().number(), halves.get(1)))
            : one(halves.get(1));
    if (second.isEmpty()) {
      return List.of();
    }
    SizeLabel whole =
        first.get().letter() == null
            ? new SizeLabel(first.get().number(), second.get().letter())
            : first.get();
    return Stream.of(whole, second.get()).distinct().toList();
  }

  /** Whether a text may name a size of some pattern, though perhaps none that is known here. */
  public static boolean isLike(String text) {
    String name = text.strip().toLowerCase(Locale.ROOT);
    return name.length() <= FEW || LIKE.matcher(name).find();
  }

  private static Optional<SizeLabel> one(String text) {
    Matcher band = BAND_FIRST.matcher(text);
    if (band.matches()) {
      return Optional.of(new SizeLabel(Integer.parseInt(band.group(1)), band.group(2)));
    }
    Matcher cup = CUP_FIRST.matcher(text);
    if (cup.matches()) {
      return Optional.of(new SizeLabel(Integer.parseInt(cup.group(2)), cup.group(1)));
    }
    Matcher roman = ROMAN.matcher(text.toUpperCase(Locale.ROOT));
    return roman.matches()
        ? Optional.of(new SizeLabel(NUMERALS.indexOf(roman.group(1)) + 1, roman.group(2)))
        : Optional.empty();
  }

  @Override
  public String toString() {
    return letter == null ? "" + number : number + " " + letter;
  }
}
