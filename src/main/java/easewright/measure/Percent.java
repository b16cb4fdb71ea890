package easewright.measure;

/** A percentage, held as a fraction: 75 % is 0.75. May be negative (negative ease) or above one. */
public record Percent(double fraction) implements Comparable<Percent> {
  public Percent {
    fraction = Rounded.finite(fraction, "a percentage");
  }

  /** From the number before the sign: {@code of(75)} is 75 %. */
  public static Percent of(double percent) {
    return new Percent(percent / 100);
  }

  /**
   * Reads "75 %".
   *
   * @throws BadQuantity if the text is not a percentage with its sign
   */
  public static Percent parse(String text) {
    return Quantity.parse(text).percent();
  }

  /** To at most one decimal: "75 %", "12.5 %". */
  public String text() {
    return Rounded.text(fraction * 100, 1) + " %";
  }

  @Override
  public int compareTo(Percent other) {
    return Double.compare(fraction, other.fraction);
  }
}
