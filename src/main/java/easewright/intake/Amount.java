package easewright.intake;

import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import java.util.Optional;

/**
 * A number found in a text, with its unit if one was written.
 *
 * @param number as {@link Quantity} reads it: "34 1/4", "86.5"; of a range the smaller, which is
 *     the safer to act on
 * @param most the larger number of a range, in the same unit; null when it is none
 * @param unit "in", "cm", "mm", "%", or null when none was written
 * @param span where it stands
 */
record Amount(String number, String most, String unit, Span span) {
  Amount(String number, String unit, Span span) {
    this(number, null, unit, span);
  }

  /** The quantity, its unit being the one written or else this one. */
  Optional<Quantity> quantity(String otherwise) {
    try {
      return Optional.of(Quantity.parse(text(otherwise)));
    } catch (BadQuantity notOne) {
      return Optional.empty();
    }
  }

  /** As a request writes it. */
  String text(String otherwise) {
    return number + " " + (unit == null ? otherwise : unit);
  }

  boolean isLength() {
    return unit != null && !unit.equals("%");
  }

  /** The bare number, for telling inches from centimetres by their size. */
  double value() {
    return quantity("mm").map(Quantity::number).orElse(0.0);
  }

  /** The length in millimetres, read in this unit where none was written; NaN for a percentage. */
  double mm(String otherwise) {
    return "%".equals(unit)
        ? Double.NaN
        : quantity(otherwise).map(one -> one.length().mm()).orElse(Double.NaN);
  }
}
