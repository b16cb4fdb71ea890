package easewright.measure;

/**
 * A length, held in millimetres. A difference of two lengths may be negative; a parsed length never
 * is.
 */
public record Length(double mm) implements Comparable<Length> {
  private static final double MM_PER_INCH = Unit.INCH.factor();

  public Length {
    mm = Rounded.finite(mm, "a length");
  }

  public static Length ofMm(double mm) {
    return new Length(mm);
  }

  public static Length ofCm(double cm) {
    return new Length(cm * Unit.CM.factor());
  }

  public static Length ofInches(double inches) {
    return new Length(inches * MM_PER_INCH);
  }

  /**
   * Reads "86.5 cm", "34 1/4 in" and the like; see {@link Quantity#parse}.
   *
   * @throws BadQuantity if the text is not a length with its unit
   */
  public static Length parse(String text) {
    return Quantity.parse(text).length();
  }

  public double cm() {
    return mm / Unit.CM.factor();
  }

  public double inches() {
    return mm / MM_PER_INCH;
  }

  public Length plus(Length other) {
    return new Length(mm + other.mm);
  }

  public Length minus(Length other) {
    return new Length(mm - other.mm);
  }

  public Length times(double factor) {
    return new Length(mm * factor);
  }

  /**
   * As shown on a tape: to 1 mm, from 100 mm up as centimetres with one decimal ("86.5 cm", "12
   * mm"); or to 1/8 in as a mixed number ("34 1/4 in", "3/8 in", "0 in").
   */
  public String text(UnitSystem system) {
    return system == UnitSystem.METRIC ? metricText() : inchText(8);
  }

  /**
   * A part of a length, as finely as it can be marked: to half a millimetre below 100 mm, or to
   * 1/16 in, so that the parts add up to the stated total.
   */
  public String markedText(UnitSystem system) {
    if (system == UnitSystem.IMPERIAL) {
      return inchText(16);
    }
    double halves = Math.round(mm * 2) / 2.0;
    return Math.abs(halves) < 100 && halves != Math.rint(halves)
        ? Rounded.fixed(halves, 1) + " mm"
        : metricText();
  }

  private String metricText() {
    double shown = Math.signum(mm) * Math.round(Math.abs(mm)) + 0.0;
    return Math.abs(shown) < 100
        ? Rounded.fixed(shown, 0) + " mm"
        : Rounded.fixed(shown / 10, 1) + " cm";
  }

  private String inchText(long partsOfAnInch) {
    long parts = Math.round(Math.abs(inches()) * partsOfAnInch);
    long whole = parts / partsOfAnInch;
    long rest = parts % partsOfAnInch;
    String sign = mm < 0 && parts > 0 ? "-" : "";
    if (rest == 0) {
      return sign + whole + " in";
    }
    long common = Long.lowestOneBit(rest);
    String fraction = rest / common + "/" + partsOfAnInch / common;
    return sign + (whole == 0 ? fraction : whole + " " + fraction) + " in";
  }

  @Override
  public int compareTo(Length other) {
    return Double.compare(mm, other.mm);
  }
}
