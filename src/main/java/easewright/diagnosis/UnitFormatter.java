package easewright.diagnosis;

import easewright.measure.Length;
import easewright.measure.Quantity;
import easewright.measure.Rounded;
import easewright.measure.UnitSystem;
import easewright.rulebook.Wording;

/** Numbers as text, lengths in the asker's units. */
public record UnitFormatter(UnitSystem units) {

  /** A length in mm, as a tape shows it. */
  public String length(double mm) {
    return Length.ofMm(mm).text(units);
  }

  /** A length in mm, read back from its text. */
  static double mm(String text) {
    return Quantity.parse(text).length().mm();
  }

  /** Whether one length is more than another as a tape in these units shows both. */
  boolean isMore(double mm, double other) {
    return mm(length(mm)) > mm(length(other));
  }

  /** A fraction as a percentage, whole from ten up. */
  public String percent(double fraction) {
    double percent = fraction * 100;
    int decimals = Math.abs(percent) < 10 && percent != Math.rint(percent) ? 1 : 0;
    return signed(percent, decimals) + " %";
  }

  /** A value in a canonical unit. */
  public String value(double value, String unit) {
    return switch (unit) {
      case "mm" -> length(value);
      case "fraction" -> percent(value);
      case "count" -> signed(value, 0);
      case "factor" -> signed(value, 3);
      case "months", "ml" -> signed(value, 0) + " " + unit;
      default -> signed(value, 2) + " " + unit;
    };
  }

  /** Keeps the sign of what rounds to zero: "-0.0" tells that something falls short. */
  private static String signed(double value, int decimals) {
    return (value < 0 ? "-" : "") + Rounded.fixed(Math.abs(value), decimals);
  }

  /** What a cloth has beside what a pattern asks of it, both fractions. */
  public String clothNeed(
      Wording wording, String property, String direction, double has, double need) {
    return wording.say(
        "cloth-need",
        "property",
        property,
        "direction",
        direction,
        "has",
        percent(has),
        "need",
        percent(need));
  }
}
