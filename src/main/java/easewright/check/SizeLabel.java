package easewright.check;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A size label as printed: "34 B", "75DD", "C75", "3".
 *
 * @param number the band number
 * @param letter the cup letter as written; null if there is none
 */
public record SizeLabel(int number, String letter) {
  private static final Pattern BAND_FIRST = Pattern.compile("(\\d{1,3})\\s*([A-Za-z]{1,3})?");
  private static final Pattern CUP_FIRST = Pattern.compile("([A-Za-z]{1,3})\\s*(\\d{1,3})");

  /** Parses a label; empty if it is not one. */
  public static Optional<SizeLabel> parse(String text) {
    Matcher band = BAND_FIRST.matcher(text.strip());
    if (band.matches()) {
      return Optional.of(new SizeLabel(Integer.parseInt(band.group(1)), band.group(2)));
    }
    Matcher cup = CUP_FIRST.matcher(text.strip());
    return cup.matches()
        ? Optional.of(new SizeLabel(Integer.parseInt(cup.group(2)), cup.group(1)))
        : Optional.empty();
  }
}
