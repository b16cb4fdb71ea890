package easewright.intake;

import java.util.BitSet;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Units of length and percent in one text, and what shows that a number is no such amount. */
final class LengthUnits {
  /** Feet, yards and metres are bought or lived in; nobody fits a bra by them. */
  private static final String NOT_OURS =
      "yards?|yds?|feet|foot|ft|met(?:er|re)s?|m|km|kms|k|g|gr|grams?|gsm|kg|kgs|kilos?|lbs?|pounds?|stone|oz|quid|dollars?|euros?|bucks|pence|cents?|years?|yrs?|yo|months?|mths?|weeks?|wks?|days?|hours?|hrs?|minutes?|mins?|min|seconds?|secs?|times|am(?! i)|pm|o'clock|degrees?|denier|dtex|ply|layers?|panels?|pieces?|pairs?|threads?|stitches|needles?|spi|way|people|miles?|mph|rows?|fingers?|hooks?|kids?|boys|girls|sizes?|toiles?|bras|tops|washes|wears";

  private static final Pattern UNIT =
      Pattern.compile(
          "(?: ?\\+| ?-?ish| or so| and a bit)?(?<of>(?:ths?|rds?)?(?:(?: of)? (?:an?|one))?)[ \\u00a0\\u202f-]{0,2}"
              + "(?:(?:(?<in>inch(?:e?s|e)?|inchis|in\\.|ins?)|(?<mm>mms?|millim\\p{L}{0,8})|(?<cm>cms?|centim\\p{L}{0,8})|(?:per ?cent|pct))(?![\\p{L}\\d²])"
              + "|(?<mark>\"|''|″|”|′′|’’|´´)|%)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern OTHER =
      Pattern.compile(
          "[ \\u00a0-]{0,2}(?:(?:" + NOT_OURS + ")(?![\\p{L}\\d])|[°€£$'′]|:(?=\\d)|-\\d{4})",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern FEET =
      Pattern.compile(
          "[ -]?(?:['’′]|ft\\.?|foot|feet)[ -]?\\d{1,2}(?: ?(?:\"|''|”|″|in(?:ch(?:es)?)?(?!\\p{L})))?",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern PREPOSITION =
      Pattern.compile(
          " (?:the|my|a|an|this|that|these|those|her|his|our|your|their|its|it|front|back|size|all|cent(?:er|re)|one|between|place|places|\\d{4})(?![\\p{L}\\d]).*",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);
  private static final Pattern TAIL =
      Pattern.compile(
          "(?= (?:and|&|n) (?:a |three |3 |\\d)| [½¼¾⅛⅜⅝⅞]| ?[½¼¾⅛⅜⅝⅞]| ?\\d{1,2}[/⁄])");

  private final String text;
  private final BitSet closing = new BitSet();

  LengthUnits(String text) {
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
    Matcher unit = UNIT.matcher(text).region(end, text.length()).useTransparentBounds(true);
    if (unit.lookingAt() && !(unit.group("mark") != null && closing.get(unit.start("mark")))) {
      if (unit.group("of").isEmpty() || fraction) {
        return isPreposition(unit) ? new Found(null, end) : new Found(name(unit), unit.end());
      }
    }
    Matcher other = OTHER.matcher(text).region(end, text.length());
    boolean ish = text.startsWith("ish", end);
    boolean letter = end < text.length() && Character.isLetter(text.charAt(end)) && !ish;
    return other.lookingAt() || letter ? null : new Found(null, end);
  }

  /** Whether a fraction may follow the unit: "2 inches and a half", 2" 1/2. */
  boolean mayGoOn(int end) {
    return TAIL.matcher(text).region(end, text.length()).lookingAt();
  }

  /** The end of a height in feet and inches whose feet end here, or this index if it is none. */
  int afterFeet(int end) {
    Matcher feet = FEET.matcher(text).region(end, text.length());
    return feet.lookingAt() ? feet.end() : end;
  }

  /** "36 in the back" counts no inches. */
  private boolean isPreposition(Matcher unit) {
    return "in".equalsIgnoreCase(unit.group("in"))
        && text.charAt(unit.start("in") - 1) == ' '
        && PREPOSITION
            .matcher(text)
            .region(unit.end(), Math.min(text.length(), unit.end() + 12))
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
