package easewright.intake;

import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import java.util.Optional;

/**
 * A number found in a text, with its unit if one was written.
 *
 * @param number as {@link Quantity} reads it: "34 1/4", "86.5"
 * @param unit "in", "cm", "mm", "m", "%", or null when none was written
 * @param span where it stands
 */
record Amount(String number, String unit, Span span) {
  /** The quantity, its unit being the one written or else this one. */
  Optional<Quantity> quantity(String otherwise) {
    try {
      return Optional.of(Quantity.parse(number + " " + (unit == null ? otherwise : unit)));
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
}
