package easewright.measure;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A number with the unit it was written in, so that an answer can use the client's units. Never
 * negative; converted to the typed records ({@link Length}, {@link Percent} …).
 */
public record Quantity(double number, Unit unit) {
  public Quantity {
    Objects.requireNonNull(unit, "a quantity needs a unit");
    if (!(number >= 0) || Double.isInfinite(number)) {
      throw new IllegalArgumentException("a quantity is a finite number, zero or more");
    }
  }

  /**
   * Parses a quantity as sewers write it: "34 1/4 in", "34¼ in", 34-1/4", "86.5 cm", "86,5 cm", "75
   * %", "2.4 N/cm", "220 g/m²". At most 40 characters; time is linear in them.
   *
   * @throws BadQuantity for anything else, including a bare number
   */
  public static Quantity parse(String text) {
    return QuantityReader.read(text);
  }

  /**
   * In plain characters, so that parsing it gives the same quantity: "34 1/4 in", "86.5 cm".
   * Imperial lengths in whole sixteenths are written as on a tape.
   */
  public String text() {
    double sixteenths = number * 16;
    boolean onTheTape =
        dimension() == Dimension.LENGTH
            && system() == UnitSystem.IMPERIAL
            && sixteenths == Math.rint(sixteenths);
    return (onTheTape ? withFraction((long) sixteenths) : decimal()) + " " + unit.symbol();
  }

  private static String withFraction(long sixteenths) {
    long whole = sixteenths / 16;
    long part = sixteenths % 16;
    if (part == 0) {
      return String.valueOf(whole);
    }
    long common = Long.lowestOneBit(part); // a power of two, as is 16
    return (whole == 0 ? "" : whole + " ") + part / common + "/" + 16 / common;
  }

  private String decimal() {
    BigDecimal exact = BigDecimal.valueOf(number);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }

  /** The family of units it was written in. */
  public UnitSystem system() {
    return unit.system();
  }

  /** What it measures. */
  public Dimension dimension() {
    return unit.dimension();
  }

  /**
   * @throws BadQuantity if it is not a length
   */
  public Length length() {
    return new Length(in(Dimension.LENGTH));
  }

  /**
   * @throws BadQuantity if it is not a percentage
   */
  public Percent percent() {
    return new Percent(in(Dimension.RATIO));
  }

  /**
   * @throws BadQuantity if it is not a force
   */
  public Force force() {
    return new Force(in(Dimension.FORCE));
  }

  /**
   * @throws BadQuantity if it is not a tension per width
   */
  public LineTension lineTension() {
    return new LineTension(in(Dimension.LINE_TENSION));
  }

  /**
   * @throws BadQuantity if it is not a cloth weight
   */
  public ArealWeight arealWeight() {
    return new ArealWeight(in(Dimension.AREAL_WEIGHT));
  }

  /**
   * @throws BadQuantity if it is not a pressure
   */
  public Pressure pressure() {
    return new Pressure(in(Dimension.PRESSURE));
  }

  private double in(Dimension wanted) {
    if (dimension() != wanted) {
      throw new BadQuantity(
          "The unit \""
              + unit.symbol()
              + "\" gives "
              + dimension().phrase()
              + ", where "
              + wanted.phrase()
              + " is needed.",
          wanted.remedy());
    }
    return number * unit.factor();
  }
}
