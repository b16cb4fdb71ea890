package easewright.diagnosis;

import easewright.measure.Length;
import easewright.measure.UnitSystem;
import easewright.rulebook.Wording;
import java.util.Locale;

/** Numbers as text, lengths in the asker's units. */
public record Shown(UnitSystem units) {

  /** A length in mm, as a tape shows it. */
  public String length(double mm) {
    return Length.ofMm(mm).text(units);
  }

  /** A fraction as a percentage, whole from ten up. */
  public String percent(double fraction) {
    double percent = fraction * 100;
    String digits = Math.abs(percent) < 10 && percent != Math.rint(percent) ? "%.1f" : "%.0f";
    return String.format(Locale.ROOT, digits, percent + 0.0) + " %";
  }

  /** A value in a canonical unit. */
  public String value(double value, String unit) {
    return switch (unit) {
      case "mm" -> length(value);
      case "fraction" -> percent(value);
      case "count" -> String.format(Locale.ROOT, "%.0f", value);
      case "factor" -> String.format(Locale.ROOT, "%.3f", value);
      case "months" -> String.format(Locale.ROOT, "%.0f months", value);
      case "ml" -> String.format(Locale.ROOT, "%.0f ml", value);
      default -> String.format(Locale.ROOT, "%.2f %s", value, unit);
    };
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
