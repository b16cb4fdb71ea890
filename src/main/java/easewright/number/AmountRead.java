package easewright.number;

import easewright.measure.Quantity;

/**
 * A length as a text says it: one or a range, in all or at each of several places. Lengths are text
 * with their unit, as a request writes them.
 *
 * @param from the length, or the smaller end of a range
 * @param to the larger end of a range; null where it is none
 * @param places at how many places it is so; 1 where it was said in all
 */
public record AmountRead(String from, String to, int places) {

  /**
   * An amount of a text.
   *
   * @param otherwise the unit where none was written
   */
  public static AmountRead of(Amount amount, String otherwise, int places) {
    return new AmountRead(amount.text(otherwise), amount.mostText(otherwise), places);
  }

  /** Whether it is one plain length in all. */
  public boolean isPlain() {
    return to == null && places == 1;
  }

  /** At one place, in millimetres; of a range the middle. */
  public double mm() {
    double least = Quantity.parse(from).length().mm();
    return to == null ? least : (least + Quantity.parse(to).length().mm()) / 2;
  }

  /** In one line, as a test compares it: "1 cm", "1 cm to 2 cm", "2 x 1 cm". */
  public String text() {
    return (places == 1 ? "" : places + " x ") + from + (to == null ? "" : " to " + to);
  }
}
