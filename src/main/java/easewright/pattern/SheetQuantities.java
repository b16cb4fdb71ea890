package easewright.pattern;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the quantities of a sheet: text with its unit, as a maker writes it. */
final class SheetQuantities {

  private static final Pattern TEXT =
      Pattern.compile(
          "(?:(\\d{1,6}(?:\\.\\d{1,4})?)|(?:(\\d{1,4}) )?(\\d{1,3})/(\\d{1,3}))"
              + " ?(mm|cm|in|%|g/m2|g/m²)");

  private SheetQuantities() {}

  /**
   * A length in mm.
   *
   * @throws IllegalArgumentException if the text is no length
   */
  static double mm(String text) {
    Matcher matcher = match(text);
    return switch (matcher.group(5)) {
      case "mm" -> number(matcher);
      case "cm" -> 10 * number(matcher);
      case "in" -> 25.4 * number(matcher);
      default -> throw new IllegalArgumentException("'" + text + "' is not a length.");
    };
  }

  /** A length in mm that may be led by a minus sign, for what is taken away. */
  static double signedMm(String text) {
    return text.startsWith("-") ? -mm(text.substring(1)) : mm(text);
  }

  /** A percentage as a fraction. */
  static double fraction(String text) {
    Matcher matcher = match(text);
    if (!matcher.group(5).equals("%")) {
      throw new IllegalArgumentException("'" + text + "' is not a percentage.");
    }
    return number(matcher) / 100;
  }

  /** A cloth weight in g/m². */
  static double gsm(String text) {
    Matcher matcher = match(text);
    if (!matcher.group(5).startsWith("g")) {
      throw new IllegalArgumentException("'" + text + "' is not a cloth weight.");
    }
    return number(matcher);
  }

  private static Matcher match(String text) {
    Matcher matcher = TEXT.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException("'" + text + "' is not a quantity with its unit.");
    }
    return matcher;
  }

  private static double number(Matcher matcher) {
    if (matcher.group(1) != null) {
      return Double.parseDouble(matcher.group(1));
    }
    int below = Integer.parseInt(matcher.group(4));
    if (below == 0) {
      throw new IllegalArgumentException("A fraction is not divided by zero.");
    }
    int whole = matcher.group(2) == null ? 0 : Integer.parseInt(matcher.group(2));
    return whole + Integer.parseInt(matcher.group(3)) / (double) below;
  }
}
