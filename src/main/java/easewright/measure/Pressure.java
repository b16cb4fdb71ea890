package easewright.measure;

/** A pressure on the skin, held in kilopascals. */
public record Pressure(double kPa) implements Comparable<Pressure> {
  public Pressure {
    kPa = Rounded.notNegative(kPa, "a pressure");
  }

  /**
   * Reads "2.0 kPa", "15 mmHg" and the like; see {@link Quantity#parse}.
   *
   * @throws BadQuantity if the text is not a pressure with its unit
   */
  public static Pressure parse(String text) {
    return Quantity.parse(text).pressure();
  }

  /**
   * To 0.1 kPa ("2.5 kPa"), or in imperial to 1 mmHg ("19 mmHg"), the unit known everywhere from
   * blood-pressure cuffs.
   */
  public String text(UnitSystem system) {
    return system == UnitSystem.METRIC
        ? Rounded.text(kPa, 1) + " kPa"
        : Rounded.text(kPa / Unit.MMHG.factor(), 0) + " mmHg";
  }

  @Override
  public int compareTo(Pressure other) {
    return Double.compare(kPa, other.kPa);
  }
}
