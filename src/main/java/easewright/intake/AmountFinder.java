package easewright.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds amounts as sewers write them: 34 1/4", 34¼ in, 86,5cm, half an inch, an inch and a half.
 * Every pattern reads a character at most a few times, so no text takes long.
 */
final class AmountFinder {
  private static final Map<String, String> SIGNS =
      Map.of(
          "½", "1/2", "¼", "1/4", "¾", "3/4", "⅛", "1/8", "⅜", "3/8", "⅝", "5/8", "⅞", "7/8", "⅓",
          "1/3", "⅔", "2/3");
  private static final Map<String, String> WORDS =
      Map.ofEntries(
          Map.entry("a", "1"),
          Map.entry("an", "1"),
          Map.entry("one", "1"),
          Map.entry("two", "2"),
          Map.entry("three", "3"),
          Map.entry("four", "4"),
          Map.entry("five", "5"),
          Map.entry("six", "6"),
          Map.entry("seven", "7"),
          Map.entry("eight", "8"),
          Map.entry("nine", "9"),
          Map.entry("ten", "10"),
          Map.entry("twelve", "12"),
          Map.entry("a couple of", "2"),
          Map.entry("a couple", "2"),
          Map.entry("couple of", "2"),
          Map.entry("a good", "1"),
          Map.entry("a full", "1"),
          Map.entry("a whole", "1"),
          Map.entry("about an", "1"),
          Map.entry("eleven", "11"),
          Map.entry("fifteen", "15"),
          Map.entry("twenty", "20"));
  private static final Map<String, String> FRACTIONS =
      Map.of(
          "half",
          "1/2",
          "a half",
          "1/2",
          "quarter",
          "1/4",
          "a quarter",
          "1/4",
          "one quarter",
          "1/4",
          "three quarters",
          "3/4",
          "an eighth",
          "1/8",
          "three eighths",
          "3/8",
          "five eighths",
          "5/8");

  private static final String UNIT_WORDS =
      "millimet(?:er|re)s?|centimet(?:er|re)s?|inch(?:es|s)?|inchs?|mms?|cms?|ins?|metres?|meters?|per ?cent|%|\"|''|″|”";
  private static final Pattern DIGITS =
      Pattern.compile(
          "(?<![\\p{L}\\d.,/])"
              + "(?<whole>\\d{1,4}(?:[.,]\\d{1,2})?)?"
              + "(?:(?<=\\d)(?:[ -]| and )?(?<half>a half|half|a quarter)(?![\\p{L}])"
              + "|(?<=\\d)(?:[ -]{1,2}| and )(?<top>\\d{1,2})[/⁄](?<bottom>\\d{1,2})"
              + "| ?(?<sign>[½¼¾⅛⅜⅝⅞⅓⅔]))?"
              + "(?:[/⁄](?<under>\\d{1,2}))?"
              + "(?:[- ]{0,2}(?<unit>"
              + UNIT_WORDS
              + ")(?![\\p{L}\\d]))?",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern SPELLED =
      Pattern.compile(
          "(?<![\\p{L}])(?:(?<fraction>three quarters|three eighths|five eighths|an eighth|one quarter|a quarter|a half|quarter|half)"
              + "(?: of)?(?: an?)?"
              + "|(?<count>a couple of|a couple|couple of|a good|a full|a whole|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty)"
              + "(?<more> and (?:a half|a quarter|three quarters))?)"
              + "[ -](?<unit>inch(?:es|s)?|cms?|centimet(?:er|re)s?|mms?|millimet(?:er|re)s?)"
              + "(?<tail> and (?:a half|a quarter|three quarters))?(?![\\p{L}])",
          Pattern.CASE_INSENSITIVE);

  private AmountFinder() {}

  /** Every amount, in order; of a range ("1-2 cm") the smaller, which is the safer to act on. */
  static List<Amount> in(String text) {
    List<Amount> found = new ArrayList<>();
    Matcher digits = DIGITS.matcher(text);
    int at = 0;
    while (at < text.length() && digits.find(at)) {
      if (digits.end() == digits.start()) {
        at = digits.end() + 1;
        continue;
      }
      at = digits.end();
      digits(digits, text).ifPresent(found::add);
    }
    Matcher spelled = SPELLED.matcher(text);
    while (spelled.find()) {
      spelled(spelled).ifPresent(found::add);
    }
    found.sort((a, b) -> Integer.compare(a.span().from(), b.span().from()));
    return ranges(found, text);
  }

  private static Optional<Amount> digits(Matcher found, String text) {
    String whole = found.group("whole");
    String number;
    if (found.group("half") != null) {
      number = whole + " " + FRACTIONS.get(found.group("half").toLowerCase(Locale.ROOT));
    } else if (found.group("top") != null) {
      number = whole + " " + found.group("top") + "/" + found.group("bottom");
    } else if (found.group("sign") != null) {
      number = (whole == null ? "" : whole + " ") + SIGNS.get(found.group("sign"));
    } else if (found.group("under") != null) {
      number = whole + "/" + found.group("under");
    } else {
      number = whole;
    }
    if (number == null || number.startsWith("null")) {
      return Optional.empty();
    }
    if (found.group("under") != null && found.group("top") != null) {
      return Optional.empty();
    }
    String unit = unit(found.group("unit"));
    Span span = new Span(found.start(), found.end());
    if ("in".equals(unit) && isPreposition(found, text)) {
      return Optional.of(
          new Amount(number, null, new Span(found.start(), found.start("unit") - 1)));
    }
    return Optional.of(new Amount(number, unit, span));
  }

  /** "36 in the back" counts no inches. */
  private static boolean isPreposition(Matcher found, String text) {
    String written = found.group("unit");
    if (!written.equalsIgnoreCase("in") || found.start("unit") == 0) {
      return false;
    }
    String rest = text.substring(found.end(), Math.min(text.length(), found.end() + 8));
    return rest.toLowerCase(Locale.ROOT)
            .matches(" (?:the|my|a|this|that|each|both|total|front|back|size)\\b.*")
        && text.charAt(found.start("unit") - 1) == ' '
        && !rest.toLowerCase(Locale.ROOT).matches(" (?:total|each|both)\\b.*");
  }

  private static Optional<Amount> spelled(Matcher found) {
    String unit = unit(found.group("unit"));
    Span span = new Span(found.start(), found.end());
    if (found.group("fraction") != null) {
      return Optional.of(
          new Amount(FRACTIONS.get(found.group("fraction").toLowerCase(Locale.ROOT)), unit, span));
    }
    String count = WORDS.get(found.group("count").toLowerCase(Locale.ROOT));
    String more = found.group("more") != null ? found.group("more") : found.group("tail");
    if (count == null) {
      return Optional.empty();
    }
    String part =
        more == null
            ? ""
            : " " + FRACTIONS.get(more.substring(" and ".length()).toLowerCase(Locale.ROOT));
    return Optional.of(new Amount(count + part, unit, span));
  }

  private static String unit(String written) {
    if (written == null) {
      return null;
    }
    String unit = written.toLowerCase(Locale.ROOT);
    if (unit.startsWith("mm") || unit.startsWith("mil")) {
      return "mm";
    }
    if (unit.startsWith("c")) {
      return "cm";
    }
    if (unit.startsWith("met")) {
      return "m";
    }
    return unit.startsWith("p") || unit.equals("%") ? "%" : "in";
  }

  private static List<Amount> ranges(List<Amount> found, String text) {
    List<Amount> kept = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      Amount one = found.get(i);
      if (i + 1 < found.size()) {
        Amount next = found.get(i + 1);
        String between =
            text.substring(one.span().to(), Math.max(one.span().to(), next.span().from()));
        if (next.unit() != null
            && (one.unit() == null || one.unit().equals(next.unit()))
            && between.strip().matches("-|–|to|or|–|—")) {
          kept.add(new Amount(one.number(), next.unit(), one.span().with(next.span())));
          i++;
          continue;
        }
      }
      kept.add(one);
    }
    return kept;
  }
}
