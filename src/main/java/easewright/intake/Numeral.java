package easewright.intake;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as it stands in a text, in figures or in words.
 *
 * @param number whole, decimal, fraction or both: "34", "86.5", "1/2", "34 1/4"
 * @param end index after its last character
 * @param isFraction whether it is less than one, so that "of an inch" may follow
 * @param other the second number of "38/33", the two girths written as one; else null
 */
record Numeral(String number, int end, boolean isFraction, String other) {
  private static final Set<Integer> PARTS = Set.of(2, 3, 4, 5, 6, 8, 10, 16, 32);
  private static final List<String> ONES =
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen");
  private static final List<String> TENS =
      List.of(
          "none", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty",
          "ninety");
  private static final List<String> PART_NAMES =
      List.of("half", "third", "quarter", "eighth", "sixteenth");
  private static final List<Integer> PART_SIZES = List.of(2, 3, 4, 8, 16);

  private static final String WORD_END = "(?![\\p{L}\\d])";
  private static final String PART =
      "(?:(?<top>an?|one|two|three|3|five|seven)[ -])?(?<part>hal(?:f|ves)|thirds?|quarters?|eighths?|sixteenths?)"
          + WORD_END;
  private static final Pattern FIGURES =
      Pattern.compile("(?<whole>\\d{0,4})(?:(?<mark>[.,])(?<decimals>\\d{1,3}))?(?!\\d)");
  private static final Pattern OVER =
      Pattern.compile("(?<over>\\d{1,3}(?:\\.\\d)?)[/⁄∕](?<under>\\d{1,3}(?:\\.\\d)?)(?![\\d/⁄∕])");
  private static final Pattern JOINT =
      Pattern.compile(" ?(?:and|&|n|\\+) ?|-and-|[ \\u00a0\\u202f-]", Pattern.CASE_INSENSITIVE);
  private static final Pattern A_PART =
      Pattern.compile("(?:[ -](?=an? )| (?:and|&|n) |-and-)" + PART, Pattern.CASE_INSENSITIVE);
  private static final Pattern ONLY_PART = Pattern.compile(PART, Pattern.CASE_INSENSITIVE);
  private static final Pattern WORDS =
      Pattern.compile(
          "(?:(?:(?<hundred>(?:a|one) hundred)(?: and)?)(?:[ -]"
              + tail("rest")
              + ")?|"
              + tail("plain")
              + ")"
              + WORD_END,
          Pattern.CASE_INSENSITIVE);

  private static String tail(String name) {
    return "(?:(?<"
        + name
        + "Tens>twenty|thirty|fou?rty|fifty|sixty|seventy|eighty|ninety)(?:[ -]?(?<"
        + name
        + "Ones>one|two|three|four|five|six|seven|eight|nine))?|(?<"
        + name
        + "Small>"
        + String.join("|", ONES.subList(10, 20))
        + "|one|two|three|four|five|six|seven|eight|nine))";
  }

  /** The number that begins here with a figure or a fraction sign; null if it is none of ours. */
  static Numeral figures(String text, int at) {
    if (isSign(text, at)) {
      return new Numeral(sign(text, at), at + 1, true, null);
    }
    Matcher part = at(ONLY_PART, text, at);
    if (part.lookingAt()) { // "3 quarters"
      return new Numeral(part(part), part.end(), true, null);
    }
    Matcher over = at(OVER, text, at);
    if (over.lookingAt()) {
      return over(over);
    }
    Matcher found = at(FIGURES, text, at);
    if (!found.lookingAt() || found.end() == at || isSlash(text, found.end())) {
      return null;
    }
    String whole = found.group("whole");
    String decimals = found.group("decimals");
    if (decimals != null) {
      boolean grouped =
          found.group("mark").equals(",") && decimals.length() == 3 && !whole.equals("0");
      return grouped
          ? null
          : new Numeral((whole.isEmpty() ? "0" : whole) + "." + decimals, found.end(), false, null);
    }
    return whole.matches("0\\d+") ? null : withPart(whole, text, found.end());
  }

  private static Numeral over(Matcher found) {
    String top = found.group("over");
    String bottom = found.group("under");
    double over = Double.parseDouble(top);
    double under = Double.parseDouble(bottom);
    if (over < under && isParts(bottom) && !top.contains(".")) {
      return new Numeral(top + "/" + bottom, found.end(), true, null);
    }
    // "bust/under 38/33"; "75/11" is a needle
    return over > under && under >= 20 ? new Numeral(top, found.end(), false, bottom) : null;
  }

  private static boolean isParts(String bottom) {
    return bottom.indexOf('.') < 0 && PARTS.contains(Integer.parseInt(bottom));
  }

  /** The number spelled out that begins here; null if none does. */
  static Numeral words(String text, int at) {
    Matcher part = at(ONLY_PART, text, at);
    // "my third toile" counts no thirds
    if (part.lookingAt() && !(part.group("top") == null && part.group("part").startsWith("t"))) {
      return new Numeral(part(part), part.end(), true, null);
    }
    Matcher found = at(WORDS, text, at);
    if (!found.lookingAt()) {
      return null;
    }
    int number =
        found.group("hundred") == null ? value(found, "plain") : 100 + value(found, "rest");
    return withPart(String.valueOf(number), text, found.end());
  }

  private static int value(Matcher found, String name) {
    String tens = found.group(name + "Tens");
    String ones = found.group(name + "Ones");
    String small = found.group(name + "Small");
    return (tens == null ? 0 : 10 * TENS.indexOf(lower(tens).replace("fourty", "forty")))
        + (ones == null ? 0 : ONES.indexOf(lower(ones)))
        + (small == null ? 0 : ONES.indexOf(lower(small)));
  }

  /** This whole number with the fraction that follows it, if one does. */
  static Numeral withPart(String whole, String text, int end) {
    Matcher named = at(A_PART, text, end);
    if (named.lookingAt()) {
      return new Numeral(whole + " " + part(named), named.end(), false, null);
    }
    Matcher joint = at(JOINT, text, end);
    int from = joint.lookingAt() ? joint.end() : end;
    if (isSign(text, from)) {
      return new Numeral(whole + " " + sign(text, from), from + 1, false, null);
    }
    Matcher over = at(OVER, text, from);
    if (from > end && over.lookingAt()) {
      Numeral part = over(over);
      if (part != null && part.isFraction()) {
        return new Numeral(whole + " " + part.number(), part.end(), false, null);
      }
    }
    return new Numeral(whole, end, false, null);
  }

  private static String part(Matcher found) {
    String top = found.group("top") == null ? "one" : lower(found.group("top"));
    int count = top.equals("3") ? 3 : Math.max(1, ONES.indexOf(top));
    String part = lower(found.group("part")).replace("halves", "half");
    int index =
        PART_NAMES.indexOf(part.endsWith("s") ? part.substring(0, part.length() - 1) : part);
    return count + "/" + PART_SIZES.get(index);
  }

  /** Whether one character here is a fraction; Unicode spells ¼ as 1, fraction slash, 4. */
  static boolean isSign(String text, int at) {
    return at < text.length()
        && Character.getType(text.charAt(at)) == Character.OTHER_NUMBER
        && sign(text, at).matches("[1-9]/[1-9]0?");
  }

  private static String sign(String text, int at) {
    return Normalizer.normalize(text.substring(at, at + 1), Normalizer.Form.NFKC).replace('⁄', '/');
  }

  private static boolean isSlash(String text, int at) {
    return at < text.length() && "/⁄∕".indexOf(text.charAt(at)) >= 0;
  }

  private static Matcher at(Pattern pattern, String text, int at) {
    return pattern
        .matcher(text)
        .region(Math.min(at, text.length()), text.length())
        .useTransparentBounds(true);
  }

  private static String lower(String word) {
    return word.toLowerCase(Locale.ROOT);
  }
}
