package easewright.pattern;

import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import java.util.function.ToDoubleFunction;

/** Parses the quantities of a sheet: text with its unit, as a maker writes it. */
final class SheetQuantities {

  private SheetQuantities() {}

  /**
   * A length in mm.
   *
   * @throws BadQuantity if the text is no length
   */
  static double mm(String text) {
    return read(text, quantity -> quantity.length().mm());
  }

  /** A length in mm that may be negative, for reductions. */
  static double signedMm(String text) {
    return text.startsWith("-") ? -mm(text.substring(1)) : mm(text);
  }

  /** A percentage as a fraction. */
  static double fraction(String text) {
    return read(text, quantity -> quantity.percent().fraction());
  }

  /** A cloth weight in g/m². */
  static double gsm(String text) {
    return read(text, quantity -> quantity.arealWeight().gramsPerM2());
  }

  private static double read(String text, ToDoubleFunction<Quantity> value) {
    return value.applyAsDouble(Quantity.parse(text));
  }
}
