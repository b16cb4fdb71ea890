package easewright.plan;

import easewright.measure.Length;
import easewright.measure.UnitSystem;
import easewright.plan.CutPlan.Amount;
import java.util.Locale;

/** Formats lengths and ids for readers. */
final class Texts {
  private static final double YARD_MM = 914.4;
  private static final int EIGHTHS = 8;

  private Texts() {}

  static Amount amount(double mm, UnitSystem units) {
    return new Amount(Length.ofMm(mm).text(units), mm);
  }

  /** A part of a change, as finely as it can be marked. */
  static Amount marked(double mm, UnitSystem units) {
    return new Amount(Length.ofMm(mm).markedText(units), mm);
  }

  /** A length of cloth as shops sell it: whole centimetres, or eighths of a yard. */
  static Amount sold(double mm, UnitSystem units) {
    if (units == UnitSystem.METRIC) {
      return new Amount(Math.round(mm / 10) + " cm", mm);
    }
    long eighths = Math.round(mm / YARD_MM * EIGHTHS);
    long rest = eighths % EIGHTHS;
    long common = Long.lowestOneBit(rest == 0 ? EIGHTHS : rest);
    String fraction = rest == 0 ? "" : rest / common + "/" + EIGHTHS / common;
    String whole = eighths >= EIGHTHS ? eighths / EIGHTHS + (rest == 0 ? "" : " ") : "";
    String text = whole + fraction;
    return new Amount((text.isEmpty() ? "0" : text) + " yd", mm);
  }

  /** A length of thread. */
  static Amount thread(double mm, UnitSystem units) {
    double shown = mm / (units == UnitSystem.METRIC ? 1000 : YARD_MM);
    return new Amount((long) Math.ceil(shown) + (units == UnitSystem.METRIC ? " m" : " yd"), mm);
  }

  /** A kebab-case id or an enum's name as words. */
  static String words(String id) {
    return id.toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ');
  }
}
