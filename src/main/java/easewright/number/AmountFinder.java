package easewright.number;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds amounts as sewers write them: 34 1/4", 34¼ in, 86,5cm, half an inch, an inch and a half.
 * The text is read from left to right, every place a bounded number of times, so no text takes
 * long. What is counted in other units, sizes, needles, dates and prices is passed over.
 */
public final class AmountFinder {
  /** As far as is looked before a number for a word that it labels, in characters. */
  private static final int LONGEST_LABEL = 12;

  private static final String BETWEEN = "between ";

  private final AmountWords words;
  private final String text;
  private final LengthUnits units;
  private final List<Amount> found = new ArrayList<>();

  private AmountFinder(AmountWords words, String text) {
    this.words = words;
    this.text = text;
    this.units = new LengthUnits(words, text);
  }

  /** Every amount, in order; of a range ("1-2 cm") both ends. */
  public static List<Amount> in(String text, AmountWords words) {
    AmountFinder finder = new AmountFinder(words, text);
    finder.read();
    return finder.ranges();
  }

  private void read() {
    int at = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (isDigit(at)
          || Numeral.isSign(text, at)
          || c == '.' && isDigit(at + 1) && !isDigit(at - 1)) {
        at = figures(at);
      } else if (Character.isLetter(c)) {
        at = words(at);
      } else {
        at++;
      }
    }
  }

  private int figures(int at) {
    Numeral number = follows(at) ? words.numbers.figures(text, at) : null;
    if (number == null) {
      return afterToken(at);
    }
    int feet = units.afterFeet(number.end());
    if (feet > number.end()) {
      return feet;
    }
    int end = add(number, at, false);
    return end > at ? end : afterToken(at);
  }

  private int words(int at) {
    int end = -1;
    Matcher article = at(words.article, at);
    Numeral number;
    if (article.lookingAt()) {
      String count = article.group("couple") == null ? "1" : "2";
      end = add(new Numeral(count, article.end(), false, null), at, true);
    } else if ((number = words.numbers.words(text, at)) != null) {
      end = add(number, at, true);
    } else if (at(words.inchAlone, at).lookingAt()) {
      end = tail("1", "in", at, at + "inch".length());
    }
    if (end > at) {
      return end;
    }
    while (at < text.length() && (Character.isLetterOrDigit(text.charAt(at)))) {
      at++;
    }
    return at;
  }

  /** Adds the amount of this number; gives the index after it, or -1 if it is none. */
  private int add(Numeral number, int from, boolean spelled) {
    LengthUnits.Found unit = units.after(number.end(), number.isFraction());
    if (unit == null) {
      return -1;
    }
    if (unit.name() == null && (isLabelled(from) || number.number().matches("\\d{4,}"))) {
      return number.end();
    }
    if (number.other() != null) {
      int second = number.end() - number.other().length();
      found.add(new Amount(number.number(), unit.name(), new TextSpan(from, second - 1)));
      found.add(new Amount(number.other(), unit.name(), new TextSpan(second, unit.end())));
      return unit.end();
    }
    if (unit.name() != null && number.number().matches("\\d+")) {
      return tail(number.number(), unit.name(), from, unit.end());
    }
    found.add(new Amount(number.number(), unit.name(), new TextSpan(from, unit.end())));
    return unit.end();
  }

  /** A whole number of a unit, and the fraction after it: "2 inches and a half". */
  private int tail(String whole, String unit, int from, int end) {
    Numeral all =
        units.mayGoOn(end)
            ? words.numbers.withPart(whole, text, end)
            : new Numeral(whole, end, false, null);
    boolean another =
        all.end() > end
            && units.after(all.end(), false) != null
            && units.after(all.end(), false).name() != null;
    if (another) {
      all = new Numeral(whole, end, false, null);
    }
    found.add(new Amount(all.number(), unit, new TextSpan(from, all.end())));
    return all.end();
  }

  /** Whether a number may begin here: not within a word, a time, a date, a price or a code. */
  private boolean follows(int at) {
    if (at == 0) {
      return true;
    }
    char last = text.charAt(at - 1);
    boolean afterDigit = isDigit(at - 2);
    return switch (last) {
      case '.', ',', ':', '\'', '’' -> !afterDigit;
      case '/', '⁄', '∕', '#', '$', '£', '€', '_', '@', '*' -> false;
      default -> !Character.isLetterOrDigit(last);
    };
  }

  private boolean isLabelled(int from) {
    return words
        .labelled
        .matcher(text.substring(Math.max(0, from - LONGEST_LABEL), from))
        .matches();
  }

  private int afterToken(int at) {
    int end = at + 1;
    while (end < text.length()
        && (Character.isLetterOrDigit(text.charAt(end))
            || "./:,⁄∕-".indexOf(text.charAt(end)) >= 0 && isDigit(end + 1))) {
      end++;
    }
    return end;
  }

  private boolean isDigit(int at) {
    return at >= 0 && at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9';
  }

  private Matcher at(Pattern pattern, int at) {
    return pattern.matcher(text).region(at, text.length()).useTransparentBounds(true);
  }

  private List<Amount> ranges() {
    List<Amount> kept = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      Amount one = found.get(i);
      Amount next = i + 1 < found.size() ? found.get(i + 1) : null;
      if (next != null && isRange(one, next)) {
        String unit = one.unit() == null ? next.unit() : one.unit();
        one = new Amount(one.number(), next.number(), unit, one.span().with(next.span()));
        i++;
      }
      if (one.unit() != null || !isWord(one) || one.value() >= words.leastGirth) {
        kept.add(one);
      }
    }
    return kept;
  }

  /** Rising, in one unit: "from 3 cm to 1" tells of a change, not of a range. */
  private boolean isRange(Amount one, Amount next) {
    String between = text.substring(one.span().to(), next.span().from());
    boolean and =
        between.strip().equalsIgnoreCase("and")
            && LengthUnits.lower(
                    text.substring(
                        Math.max(0, one.span().from() - BETWEEN.length()), one.span().from()))
                .endsWith(BETWEEN);
    boolean units = one.unit() == null || next.unit() == null || one.unit().equals(next.unit());
    return (and || words.range.matcher(between).matches()) && units && one.value() < next.value();
  }

  private boolean isWord(Amount amount) {
    return Character.isLetter(text.charAt(amount.span().from()));
  }
}
