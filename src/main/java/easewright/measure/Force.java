package easewright.measure;

/** A force, held in newtons; a weight read from a scale is converted to a force. */
public record Force(double newtons) implements Comparable<Force> {
  public Force {
    newtons = Rounded.notNegative(newtons, "a force");
  }

  /**
   * Reads "5 N", "500 gf" and the like; see {@link Quantity#parse}.
   *
   * @throws BadQuantity if the text is not a force with its unit
   */
  public static Force parse(String text) {
    return Quantity.parse(text).force();
  }

  /** To 0.01: "4.9 N", or in pounds-force "1.1 lbf". */
  public String text(UnitSystem system) {
    return system == UnitSystem.METRIC
        ? Rounded.text(newtons, 2) + " N"
        : Rounded.text(newtons / Unit.POUND_FORCE.factor(), 2) + " lbf";
  }

  @Override
  public int compareTo(Force other) {
    return Double.compare(newtons, other.newtons);
  }
}
