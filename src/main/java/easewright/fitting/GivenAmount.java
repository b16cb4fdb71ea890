package easewright.fitting;

import easewright.measure.Length;
import easewright.measure.UnitSystem;
import easewright.rulebook.Wording;

/**
 * An amount as the wearer gave it: one length or a range, in all or at each of several places.
 *
 * @param from the length, or the lower end of the range
 * @param to the same length, or the upper end of the range
 * @param places at how many places it was measured alike; 1 when it is the amount in all
 */
public record GivenAmount(Length from, Length to, int places) {

  /** One length, in all. */
  public static GivenAmount of(Length length) {
    return new GivenAmount(length, length, 1);
  }

  /** All places together, in millimetres; of a range the middle. */
  public double mm() {
    return places * (from.mm() + to.mm()) / 2;
  }

  /**
   * One standard deviation of {@link #mm()}, in millimetres. Half the width of a range joins the
   * error of measuring as a second error, independent of it; places are measured one by one, so
   * their errors add up as squares, but a range said of all of them is one doubt.
   *
   * @param measuringMm the error of measuring one length
   */
  public double sdMm(double measuringMm) {
    double half = places * (to.mm() - from.mm()) / 2;
    return Math.hypot(Math.sqrt(places) * measuringMm, half);
  }

  /** On one side, where it was given at as many places on either; else as it is. */
  public GivenAmount onOneSide() {
    return places % 2 == 0 ? new GivenAmount(from, to, places / 2) : this;
  }

  /** Whether it is more than one plain length, so that its sum needs to be shown beside it. */
  public boolean isComposed() {
    return places > 1 || !from.equals(to);
  }

  /** As it was given, in these units: "1 cm to 2 cm at each of 2 places". */
  public String text(UnitSystem units, Wording wording) {
    String length =
        from.equals(to)
            ? from.text(units)
            : wording.say("amount-range", "from", from.text(units), "to", to.text(units));
    return places == 1 ? length : wording.say("amount-places", "each", length, "places", places);
  }
}
