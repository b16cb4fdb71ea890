package easewright.measure;

/** The weight of a cloth, held in grams per square metre. */
public record ArealWeight(double gramsPerM2) implements Comparable<ArealWeight> {
  public ArealWeight {
    gramsPerM2 = Rounded.notNegative(gramsPerM2, "a cloth weight");
  }

  /**
   * Reads "220 g/m²", "6.5 oz/yd²" and the like; see {@link Quantity#parse}.
   *
   * @throws BadQuantity if the text is not a cloth weight with its unit
   */
  public static ArealWeight parse(String text) {
    return Quantity.parse(text).arealWeight();
  }

  /** To 1 g/m² ("220 g/m²") or 0.1 oz/yd² ("6.5 oz/yd²"). */
  public String text(UnitSystem system) {
    return system == UnitSystem.METRIC
        ? Rounded.text(gramsPerM2, 0) + " g/m²"
        : Rounded.text(gramsPerM2 / Unit.OUNCE_PER_YD2.factor(), 1) + " oz/yd²";
  }

  @Override
  public int compareTo(ArealWeight other) {
    return Double.compare(gramsPerM2, other.gramsPerM2);
  }
}
