package easewright.measure;

/** Tension along a cloth or band, held in newtons per centimetre of its width. */
public record LineTension(double newtonsPerCm) implements Comparable<LineTension> {
  public LineTension {
    newtonsPerCm = Rounded.notNegative(newtonsPerCm, "a tension per width");
  }

  /**
   * Reads "2.4 N/cm", "240 N/m" and the like; see {@link Quantity#parse}.
   *
   * @throws BadQuantity if the text is not a tension per width with its unit
   */
  public static LineTension parse(String text) {
    return Quantity.parse(text).lineTension();
  }

  /** To 0.01: "2.4 N/cm", or in pounds-force "1.37 lbf/in". */
  public String text(UnitSystem system) {
    return system == UnitSystem.METRIC
        ? Rounded.text(newtonsPerCm, 2) + " N/cm"
        : Rounded.text(newtonsPerCm / Unit.POUND_FORCE_PER_INCH.factor(), 2) + " lbf/in";
  }

  @Override
  public int compareTo(LineTension other) {
    return Double.compare(newtonsPerCm, other.newtonsPerCm);
  }
}
