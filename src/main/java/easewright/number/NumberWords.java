package easewright.number;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads numbers in figures, and in the words that the rule book has for them. */
final class NumberWords {
  private static final Set<Integer> PARTS = Set.of(2, 3, 4, 5, 6, 8, 10, 16, 32);
  private static final String WORD_END = "(?![\\p{L}\\d])";
  private static final Pattern FIGURES =
      Pattern.compile("(?<whole>\\d{0,4})(?:(?<mark>[.,])(?<decimals>\\d{1,3}))?(?!\\d)");
  private static final Pattern OVER =
      Pattern.compile("(?<over>\\d{1,3}(?:\\.\\d)?)[/⁄∕](?<under>\\d{1,3}(?:\\.\\d)?)(?![\\d/⁄∕])");

  private final WordLists lists;
  private final double leastGirth;
  private final Map<String, Double> ones;
  private final Map<String, Double> tens;
  private final Map<String, Double> hundreds;
  private final Map<String, Double> parts;
  private final Map<String, Double> counts;
  private final Pattern joint;
  private final Pattern joinedPart;
  private final Pattern onlyPart;
  private final Pattern words;

  /**
   * Takes the words of a rule book.
   *
   * @param leastGirth from so many on, the second number of "38/33" is a girth; "75/11" is a needle
   */
  NumberWords(WordLists lists, double leastGirth) {
    this.leastGirth = leastGirth;
    this.lists = lists;
    this.ones = lists.numbers("numbers in words");
    this.tens = lists.numbers("tens in words");
    this.hundreds = lists.numbers("hundreds in words");
    this.parts = lists.numbers("parts in words");
    this.counts = lists.numbers("counts of parts");
    String joins = lists.oneOf("joins of a part");
    String part =
        "(?:(?<top>"
            + WordLists.oneOf(counts.keySet())
            + ")[ -])?(?<part>"
            + WordLists.oneOf(parts.keySet())
            + ")"
            + WORD_END;
    this.joint = ignoringCase(" ?(?:" + joins + "|\\+) ?|-" + joins + "-|[ \\u00a0\\u202f-]");
    this.joinedPart =
        ignoringCase(
            "(?:[ -](?=" + lists.oneOf("articles") + " )| " + joins + " |-" + joins + "-)" + part);
    this.onlyPart = ignoringCase(part);
    this.words =
        ignoringCase(
            "(?:(?<hundred>"
                + WordLists.oneOf(hundreds.keySet())
                + ")(?: and)?(?:[ -]"
                + tail("rest")
                + ")?|"
                + tail("plain")
                + ")"
                + WORD_END);
  }

  private static Pattern ignoringCase(String expression) {
    return Pattern.compile(expression, Pattern.CASE_INSENSITIVE);
  }

  private String tail(String name) {
    String digits =
        WordLists.oneOf(
            ones.keySet().stream().filter(word -> ones.get(word) < 10).collect(Collectors.toSet()));
    return "(?:(?<"
        + name
        + "Tens>"
        + WordLists.oneOf(tens.keySet())
        + ")(?:[ -]?(?<"
        + name
        + "Ones>"
        + digits
        + "))?|(?<"
        + name
        + "Small>"
        + WordLists.oneOf(ones.keySet())
        + "))";
  }

  /** The number that begins here with a figure or a fraction sign; null if it is none of ours. */
  Numeral figures(String text, int at) {
    if (Numeral.isSign(text, at)) {
      return new Numeral(Numeral.sign(text, at), at + 1, true, null);
    }
    Matcher part = at(onlyPart, text, at);
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

  private Numeral over(Matcher found) {
    String top = found.group("over");
    String bottom = found.group("under");
    double over = Double.parseDouble(top);
    double under = Double.parseDouble(bottom);
    if (over < under && isParts(bottom) && !top.contains(".")) {
      return new Numeral(top + "/" + bottom, found.end(), true, null);
    }
    return over > under && under >= leastGirth
        ? new Numeral(top, found.end(), false, bottom)
        : null;
  }

  private static boolean isParts(String bottom) {
    return bottom.indexOf('.') < 0 && PARTS.contains(Integer.parseInt(bottom));
  }

  /** The number spelled out that begins here; null if none does. */
  Numeral words(String text, int at) {
    Matcher part = at(onlyPart, text, at);
    boolean counted =
        part.lookingAt()
            && (part.group("top") != null
                || !lists.has("only counted parts", lower(part.group("part"))));
    if (counted) {
      return new Numeral(part(part), part.end(), true, null);
    }
    Matcher found = at(words, text, at);
    if (!found.lookingAt()) {
      return null;
    }
    String hundred = found.group("hundred");
    int number =
        hundred == null ? value(found, "plain") : of(hundreds, hundred) + value(found, "rest");
    return withPart(String.valueOf(number), text, found.end());
  }

  private int value(Matcher found, String name) {
    return of(tens, found.group(name + "Tens"))
        + of(ones, found.group(name + "Ones"))
        + of(ones, found.group(name + "Small"));
  }

  private static int of(Map<String, Double> numbers, String word) {
    return word == null ? 0 : numbers.get(lower(word)).intValue();
  }

  /** This whole number with the fraction that follows it, if one does. */
  Numeral withPart(String whole, String text, int end) {
    Matcher named = at(joinedPart, text, end);
    if (named.lookingAt()) {
      return new Numeral(whole + " " + part(named), named.end(), false, null);
    }
    Matcher between = at(joint, text, end);
    int from = between.lookingAt() ? between.end() : end;
    if (Numeral.isSign(text, from)) {
      return new Numeral(whole + " " + Numeral.sign(text, from), from + 1, false, null);
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

  private String part(Matcher found) {
    int count = found.group("top") == null ? 1 : of(counts, found.group("top"));
    return count + "/" + of(parts, found.group("part"));
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
