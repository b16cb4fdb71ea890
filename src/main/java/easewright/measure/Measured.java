package easewright.measure;

import java.util.List;
import java.util.Objects;

/**
 * A measured length with its error: {@code sdMm} is the standard deviation in millimetres, above
 * zero, since no tape is exact. {@code writtenIn} is the unit the client used, kept for answering
 * in it and for detecting wrong units.
 */
public record Measured(Length value, double sdMm, Unit writtenIn) {
  public Measured {
    Objects.requireNonNull(value, "a measurement needs a value");
    Objects.requireNonNull(writtenIn, "a measurement needs the unit it was written in");
    if (value.mm() < 0) {
      throw new IllegalArgumentException("a measurement must not be negative");
    }
    if (!(sdMm > 0) || Double.isInfinite(sdMm)) {
      throw new IllegalArgumentException("a measuring error must be above zero and finite");
    }
    if (writtenIn.dimension() != Dimension.LENGTH) {
      throw new IllegalArgumentException("a measurement is written in a unit of length");
    }
  }

  /** A measurement written in centimetres. */
  public Measured(Length value, double sdMm) {
    this(value, sdMm, Unit.CM);
  }

  /**
   * A measurement as written.
   *
   * @param sdMm its error, one standard deviation, mm
   * @throws BadQuantity if the quantity is not a length
   */
  public static Measured of(Quantity written, double sdMm) {
    return new Measured(written.length(), sdMm, written.unit());
  }

  /**
   * Several readings of the same measurement combined: the mean weighted by inverse variance, SD =
   * (Σ 1/sd²)^−½. Correct only for independent errors: a habit of holding the tape low is repeated,
   * not averaged out. Keeps the unit of the first.
   */
  public static Measured combined(List<Measured> readings) {
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("combining needs at least one measurement");
    }
    double weights = 0;
    double sum = 0;
    for (Measured one : readings) {
      double weight = 1 / (one.sdMm * one.sdMm);
      weights += weight;
      sum += weight * one.value.mm();
    }
    return new Measured(
        Length.ofMm(sum / weights), 1 / Math.sqrt(weights), readings.get(0).writtenIn);
  }

  /** This minus the other, mm; may be negative. Its error is {@link #differenceSdMm}. */
  public double differenceMm(Measured other) {
    return value.mm() - other.value.mm();
  }

  /** Error SD of the difference of two independent readings, mm: √(sd² + sd²). */
  public double differenceSdMm(Measured other) {
    return Math.hypot(sdMm, other.sdMm);
  }

  /** The family of units it was written in. */
  public UnitSystem system() {
    return writtenIn.system();
  }

  /** The value in the client's units, as shown on a tape. */
  public String text() {
    return value.text(system());
  }
}
