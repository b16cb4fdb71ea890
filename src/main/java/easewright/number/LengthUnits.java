package easewright.number;

import java.util.BitSet;
import java.util.Locale;
import java.util.regex.Matcher;

/** Units of length and percent in one text, and what shows that a number is no such amount. */
final class LengthUnits {
  /** As far as is looked after "in", in characters. */
  private static final int LONGEST_WORD = 12;

  private final AmountWords words;
  private final String text;
  private final BitSet closing = new BitSet();

  LengthUnits(AmountWords words, String text) {
    this.words = words;
    this.text = text;
    findClosingQuotes();
  }

  /**
   * A unit found.
   *
   * @param name "in", "cm", "mm", "%", or null for a number that stands bare
   * @param end index after it, or after the number where it is bare
   */
  record Found(String name, int end) {}

  /** A quotation closed after a number is no inch mark: he said "cut 36". */
  private void findClosingQuotes() {
    boolean open = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean number =
          i > 0 && (isFigure(i - 1) || i > 1 && text.charAt(i - 1) == ' ' && isFigure(i - 2));
      if (c == '\n') {
        open = false;
      } else if (c == '“' || c == '"' && !open && !number) {
        open = true;
      } else if ((c == '"' || c == '”') && open) {
        closing.set(i);
        open = false;
      }
    }
  }

  private boolean isFigure(int at) {
    return Character.isDigit(text.charAt(at)) || Numeral.isSign(text, at);
  }

  /** The unit after a number that ends here; null if the number is no amount of ours at all. */
  Found after(int end, boolean fraction) {
    Matcher unit = words.unit.matcher(text).region(end, text.length()).useTransparentBounds(true);
    if (unit.lookingAt() && !(unit.group("mark") != null && closing.get(unit.start("mark")))) {
      if (unit.group("of").isEmpty() || fraction) {
        return isPreposition(unit) ? new Found(null, end) : new Found(name(unit), unit.end());
      }
    }
    Matcher other = words.otherUnit.matcher(text).region(end, text.length());
    boolean ish = text.startsWith("ish", end);
    boolean letter = end < text.length() && Character.isLetter(text.charAt(end)) && !ish;
    return other.lookingAt() || letter ? null : new Found(null, end);
  }

  /** Whether a fraction may follow the unit: "2 inches and a half", 2" 1/2. */
  boolean mayGoOn(int end) {
    return words.tail.matcher(text).region(end, text.length()).lookingAt();
  }

  /** The end of a height in feet and inches whose feet end here, or this index if it is none. */
  int afterFeet(int end) {
    Matcher feet = words.feet.matcher(text).region(end, text.length());
    return feet.lookingAt() ? feet.end() : end;
  }

  /** "36 in the back" counts no inches. */
  private boolean isPreposition(Matcher unit) {
    return "in".equalsIgnoreCase(unit.group("in"))
        && text.charAt(unit.start("in") - 1) == ' '
        && words
            .afterIn
            .matcher(text)
            .region(unit.end(), Math.min(text.length(), unit.end() + LONGEST_WORD))
            .lookingAt();
  }

  private static String name(Matcher unit) {
    if (unit.group("mm") != null) {
      return "mm";
    }
    if (unit.group("cm") != null) {
      return "cm";
    }
    return unit.group("in") != null || unit.group("mark") != null ? "in" : "%";
  }

  static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
