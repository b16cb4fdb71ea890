package easewright.number;

import java.util.regex.Pattern;

/** How amounts are written, in the words that the rule book has for numbers and units. */
public final class AmountWords {
  final NumberWords numbers;

  /** "A couple of" and "a good", before a unit. */
  final Pattern article;

  /** "Inch and a half", without an article. */
  final Pattern inchAlone;

  /** Between the two ends of a range. */
  final Pattern range;

  /** Before a number that names something: "size 12". */
  final Pattern labelled;

  /** A unit of ours after a number. */
  final Pattern unit;

  /** A unit of others after a number. */
  final Pattern otherUnit;

  /** The inches after feet. */
  final Pattern feet;

  /** After "in", where that is no inch. */
  final Pattern afterIn;

  /** Before the fraction that follows a unit. */
  final Pattern tail;

  /** A bare number in words below this is no girth. */
  final double leastGirth;

  /** Prepares the words. */
  public AmountWords(WordLists lists, ReadingBounds bounds) {
    this.leastGirth = bounds.of("least-girth-in-inches");
    this.numbers = new NumberWords(lists, leastGirth);
    String joins = lists.oneOf("joins of a part");
    String more = " " + joins + " (?:" + lists.oneOf("parts after an inch") + " |\\d)";
    String inches = lists.oneOf("inches");
    this.article =
        ignoringCase(
            "(?:(?<couple>"
                + lists.oneOf("couples")
                + ")|"
                + lists.oneOf("one of a unit")
                + ")(?: "
                + lists.oneOf("said of a unit")
                + ")?(?=[ -]"
                + lists.oneOf("beginnings of units")
                + ")");
    this.inchAlone = ignoringCase("inch(?=" + more + ")");
    this.range =
        ignoringCase(
            "(?: "
                + lists.oneOf("roughly after a number")
                + ")? ?(?:[-–—−~]|-?"
                + lists.oneOf("ranges")
                + "-?) ?");
    this.labelled =
        Pattern.compile(
            "(?is).*(?<!\\p{L})(?:(?<!"
                + lists.oneOf("girths before a size")
                + " )size|"
                + lists.oneOf("labels")
                + ")[ :#]?");
    this.unit =
        ignoringCase(
            "(?: ?\\+| ?-?ish| "
                + lists.oneOf("roughly after a number")
                + ")?(?<of>(?:ths?|rds?)?(?: "
                + lists.oneOf("before a unit")
                + ")?)[ \\u00a0\\u202f-]{0,2}(?:(?:(?<in>"
                + inches
                + ")|(?<mm>"
                + lists.oneOf("millimetres")
                + ")|(?<cm>"
                + lists.oneOf("centimetres")
                + ")|"
                + lists.oneOf("percent")
                + ")(?![\\p{L}\\d²])|(?<mark>\"|''|″|”|′′|’’|´´)|%)");
    this.otherUnit =
        ignoringCase(
            "[ \\u00a0-]{0,2}(?:(?!"
                + lists.oneOf("no other units")
                + ")"
                + lists.oneOf("other units")
                + "(?![\\p{L}\\d])|[°€£$'′]|:(?=\\d)|-\\d{4})");
    this.feet =
        ignoringCase(
            "[ -]?(?:['’′]|"
                + lists.oneOf("feet")
                + ")[ -]?\\d{1,2}(?: ?(?:\"|''|”|″|"
                + inches
                + "(?!\\p{L})))?");
    this.afterIn =
        Pattern.compile(
            " (?:" + lists.oneOf("after the word in") + "|\\d{4})(?![\\p{L}\\d]).*",
            Pattern.CASE_INSENSITIVE | Pattern.DOTALL);
    this.tail = Pattern.compile("(?=" + more + "| [½¼¾⅛⅜⅝⅞]| ?[½¼¾⅛⅜⅝⅞]| ?\\d{1,2}[/⁄])");
  }

  private static Pattern ignoringCase(String expression) {
    return Pattern.compile(expression, Pattern.CASE_INSENSITIVE);
  }
}
