package easewright.intake;

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
record Amount(String number, String most, String unit, TextSpan span) {
  /** How many words after a length may say of how many sides it is. */
  private static final int FARTHEST_SIDE = 6;

  Amount(String number, String unit, TextSpan span) {
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

  /** The middle of a range, or the number itself, as a request writes it. */
  String middle(String otherwise) {
    if (most == null) {
      return text(otherwise);
    }
    double middle = (value() + new Amount(most, unit, span).value()) / 2;
    String plain = BigDecimal.valueOf(middle).stripTrailingZeros().toPlainString();
    return plain + " " + (unit == null ? otherwise : unit);
  }

  /** Half of what a range spans, in millimetres; 0 where it is none. */
  double halfWidthMm(String otherwise) {
    return most == null ? 0 : (new Amount(most, unit, span).mm(otherwise) - mm(otherwise)) / 2;
  }

  /** Whether it is said of each of two sides: "1 cm on each side", "1 cm off each side seam". */
  boolean isPerSide(Post post) {
    int last = Whereabouts.wordAt(post, span.to() - 1);
    int to = post.sentenceOf(last).last();
    StringBuilder after = new StringBuilder(" ");
    for (int i = last + 1; i <= Math.min(to, last + FARTHEST_SIDE); i++) {
      after.append(post.words().get(i).plain()).append(' ');
    }
    String words = after.toString();
    return post.lists().words("per side").stream()
        .anyMatch(side -> words.contains(" " + side + " "));
  }

  /** Twice this length: what was said of each of two sides. */
  Amount doubled() {
    String twice = BigDecimal.valueOf(2 * value()).stripTrailingZeros().toPlainString();
    return new Amount(twice, unit, span);
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
