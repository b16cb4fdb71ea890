package easewright.measure;

import java.text.Normalizer;

/** Parses a quantity from left to right without backtracking, so no text is slow to reject. */
final class QuantityReader {
  static final int LONGEST = 40;

  private static final String REMEDY = "Write the unit: \"86.5 cm\" or \"34 in\".";
  private static final String NUMBER_REMEDY =
      "Write one number and its unit: \"86.5 cm\" or \"34 1/4 in\".";
  private static final String SLASHES = "/⁄∕";
  private static final String DASHES = "-‐‑–−";
  private static final int MOST_DIGITS = 6;

  private final String text;
  private int at;

  private QuantityReader(String text) {
    this.text = text;
  }

  static Quantity read(String text) {
    if (text == null || text.isBlank()) {
      throw new BadQuantity("No quantity is written.", REMEDY);
    }
    if (text.length() > LONGEST) {
      throw new BadQuantity(
          "The quantity is longer than " + LONGEST + " characters.", NUMBER_REMEDY);
    }
    QuantityReader reader = new QuantityReader(text);
    reader.skipSpaces();
    double number = reader.number();
    return new Quantity(number, reader.unit());
  }

  private double number() {
    if (is(DASHES)) {
      throw bad("is negative", "Write the amount without a sign, and say the direction in words.");
    }
    if (isFraction()) {
      return fractionSign();
    }
    String whole = digits();
    if (is(".,")) {
      return decimal(whole);
    }
    if (whole.isEmpty()) {
      throw bad("does not start with a number", NUMBER_REMEDY);
    }
    if (is(SLASHES)) {
      return over(whole);
    }
    return Double.parseDouble(whole) + partAfter();
  }

  private double decimal(String whole) {
    boolean comma = text.charAt(at) == ',';
    at++;
    // Unit converters write 86.36000000000001; only the digits before the decimal mark are limited.
    String decimals = digits(LONGEST);
    if (decimals.isEmpty()) {
      throw bad("ends in a decimal mark", NUMBER_REMEDY);
    }
    // "1,250 mm" is ambiguous (1250 mm or 1.25 mm); "0,125 in" is not.
    if (comma && decimals.length() == 3 && !whole.isEmpty() && !whole.startsWith("0")) {
      throw bad(
          "can be read with a thousands comma or a decimal comma",
          "Write the number without a comma: \"1250 mm\" or \"1.25 m\".");
    }
    return Double.parseDouble((whole.isEmpty() ? "0" : whole) + "." + decimals);
  }

  /** The fraction after a whole number: " 1/4", "-1/4", "¼"; zero if a unit follows instead. */
  private double partAfter() {
    boolean spaced = skipSpaces();
    boolean dashed = is(DASHES);
    if (dashed) {
      at++;
      skipSpaces();
    }
    double part;
    if (isFraction()) {
      part = fractionSign();
    } else if ((spaced || dashed) && isDigit()) {
      String top = digits();
      if (!is(SLASHES)) {
        throw bad("holds two numbers", "Write one number, not a range: \"86.5 cm\" or \"34 in\".");
      }
      part = over(top);
    } else if (dashed) {
      throw bad("has a dash where a fraction or unit should be", NUMBER_REMEDY);
    } else {
      return 0;
    }
    if (part >= 1) {
      throw bad("has a fraction of one or more after a whole number", NUMBER_REMEDY);
    }
    return part;
  }

  private double over(String top) {
    at++;
    String bottom = digits();
    if (bottom.isEmpty()) {
      throw bad("has an unfinished fraction", NUMBER_REMEDY);
    }
    double divisor = Double.parseDouble(bottom);
    if (divisor == 0) {
      throw bad("has a fraction over zero", NUMBER_REMEDY);
    }
    return Double.parseDouble(top) / divisor;
  }

  /** A one-character fraction: Unicode decomposes ¼ into 1, fraction slash, 4. */
  private double fractionSign() {
    String[] parts = spelled(text.charAt(at++)).split("⁄");
    return Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
  }

  private boolean isFraction() {
    return at < text.length()
        && Character.getType(text.charAt(at)) == Character.OTHER_NUMBER
        && spelled(text.charAt(at)).matches("[0-9]{1,2}⁄[0-9]{1,2}");
  }

  private static String spelled(char c) {
    return Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFKC);
  }

  private Unit unit() {
    skipSpaces();
    String name = text.substring(at).strip();
    if (name.endsWith(".")) {
      name = name.substring(0, name.length() - 1);
    }
    if (name.isEmpty()) {
      throw bad("has no unit", REMEDY);
    }
    if (isDigit() || isFraction() || is(".,/" + DASHES)) {
      throw bad("holds more than one number", NUMBER_REMEDY);
    }
    String unknown = name;
    return Unit.named(name)
        .orElseThrow(
            () ->
                new BadQuantity(
                    "The unit \"" + BadQuantity.excerpt(unknown) + "\" is not known.", REMEDY));
  }

  private String digits() {
    return digits(MOST_DIGITS);
  }

  private String digits(int most) {
    int from = at;
    while (isDigit()) {
      at++;
    }
    if (at - from > most) {
      throw bad("has more digits than a tape or a scale can show", NUMBER_REMEDY);
    }
    return text.substring(from, at);
  }

  private boolean isDigit() {
    return at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9';
  }

  private boolean is(String anyOf) {
    return at < text.length() && anyOf.indexOf(text.charAt(at)) >= 0;
  }

  private boolean skipSpaces() {
    int from = at;
    while (at < text.length()
        && (Character.isWhitespace(text.charAt(at)) || Character.isSpaceChar(text.charAt(at)))) {
      at++;
    }
    return at > from;
  }

  private BadQuantity bad(String what, String remedy) {
    return new BadQuantity("\"" + BadQuantity.excerpt(text) + "\" " + what + ".", remedy);
  }
}
