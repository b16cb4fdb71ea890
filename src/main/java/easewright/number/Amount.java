package easewright.number;

import easewright.measure.BadQuantity;
import easewright.measure.Quantity;
import java.math.BigDecimal;
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
public record Amount(String number, String most, String unit, TextSpan span) {
  public Amount(String number, String unit, TextSpan span) {
    this(number, null, unit, span);
  }

  /** The quantity, its unit being the one written or else this one. */
  public Optional<Quantity> quantity(String otherwise) {
    try {
      return Optional.of(Quantity.parse(text(otherwise)));
    } catch (BadQuantity notOne) {
      return Optional.empty();
    }
  }

  /** As a request writes it. */
  public String text(String otherwise) {
    return number + " " + (unit == null ? otherwise : unit);
  }

  /** The larger end of a range, as a request writes it; null where it is none. */
  public String mostText(String otherwise) {
    return most == null ? null : new Amount(most, unit, span).text(otherwise);
  }

  /** The middle of a range, or the number itself, as a request writes it. */
  public String middle(String otherwise) {
    if (most == null) {
      return text(otherwise);
    }
    double middle = (value() + new Amount(most, unit, span).value()) / 2;
    return plain(middle) + " " + (unit == null ? otherwise : unit);
  }

  /** Half of what a range spans, in millimetres; 0 where it is none. */
  public double halfWidthMm(String otherwise) {
    return most == null ? 0 : (new Amount(most, unit, span).mm(otherwise) - mm(otherwise)) / 2;
  }

  /** Twice this length: once across a girth laid flat, or one layer of a fold. */
  public Amount doubled() {
    String twiceMost = most == null ? null : twice(new Amount(most, unit, span).value());
    return new Amount(twice(value()), twiceMost, unit, span);
  }

  /** Half of this length: one side of two. */
  public Amount halved() {
    String halfMost = most == null ? null : plain(new Amount(most, unit, span).value() / 2);
    return new Amount(plain(value() / 2), halfMost, unit, span);
  }

  private static String twice(double number) {
    return plain(2 * number);
  }

  private static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  public boolean isLength() {
    return unit != null && !unit.equals("%");
  }

  /** The bare number, for telling inches from centimetres by their size. */
  public double value() {
    return quantity("mm").map(Quantity::number).orElse(0.0);
  }

  /** The length in millimetres, read in this unit where none was written; NaN for a percentage. */
  public double mm(String otherwise) {
    return "%".equals(unit)
        ? Double.NaN
        : quantity(otherwise).map(one -> one.length().mm()).orElse(Double.NaN);
  }
}
