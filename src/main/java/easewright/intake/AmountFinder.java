package easewright.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds amounts as sewers write them: 34 1/4", 34¼ in, 86,5cm, half an inch, an inch and a half.
 * The text is read from left to right, every place a bounded number of times, so no text takes
 * long. What is counted in other units, sizes, needles, dates and prices is passed over.
 */
final class AmountFinder {
  private static final double LEAST_BARE_WORD = 20;

  private static final Pattern ARTICLE =
      Pattern.compile(
          "(?:(?<couple>(?:a )?couple(?: of)?)|an?|another)(?: (?:good|full|whole|solid|extra|further|generous|scant|bare|mere|additional|single))?(?=[ -](?:inch|cm|centim|mm|millim))",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern INCH_ALONE =
      Pattern.compile("inch(?= (?:and|&|n) (?:a |three |3 |\\d))", Pattern.CASE_INSENSITIVE);
  private static final Pattern RANGE =
      Pattern.compile(" ?(?:-|–|—|−|~|to|or|-to-|till|up to) ?", Pattern.CASE_INSENSITIVE);
  private static final Pattern LABELLED =
      Pattern.compile(
          "(?is).*(?<!\\p{L})(?:(?<!bust )(?<!chest )(?<!band )size|sizes|sz|needle|number|nr\\.?|no\\.|version|toile|muslin|page|step|issue|view|aged?|grade|year|channel)[ :#]?");

  private final String text;
  private final LengthUnits units;
  private final List<Amount> found = new ArrayList<>();

  private AmountFinder(String text) {
    this.text = text;
    this.units = new LengthUnits(text);
  }

  /** Every amount, in order; of a range ("1-2 cm") both ends. */
  static List<Amount> in(String text) {
    AmountFinder finder = new AmountFinder(text);
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
    Numeral number = follows(at) ? Numeral.figures(text, at) : null;
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
    Matcher article = at(ARTICLE, at);
    Numeral number;
    if (article.lookingAt()) {
      String count = article.group("couple") == null ? "1" : "2";
      end = add(new Numeral(count, article.end(), false, null), at, true);
    } else if ((number = Numeral.words(text, at)) != null) {
      end = add(number, at, true);
    } else if (at(INCH_ALONE, at).lookingAt()) {
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
            ? Numeral.withPart(whole, text, end)
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
    return LABELLED.matcher(text.substring(Math.max(0, from - 12), from)).matches();
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
      if (one.unit() != null || !isWord(one) || one.value() >= LEAST_BARE_WORD) {
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
                    text.substring(Math.max(0, one.span().from() - 8), one.span().from()))
                .endsWith("between ");
    boolean units = one.unit() == null || next.unit() == null || one.unit().equals(next.unit());
    return (and || RANGE.matcher(between).matches()) && units && one.value() < next.value();
  }

  private boolean isWord(Amount amount) {
    return Character.isLetter(text.charAt(amount.span().from()));
  }
}
