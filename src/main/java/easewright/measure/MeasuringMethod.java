package easewright.measure;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * How a measurement was taken, with its expected error as a standard deviation (SD) in millimetres.
 * The underlying limits are interpreted as 95 % limits, so SD = limit / 1.96; both that
 * interpretation and the handling of short lengths are ours.
 */
public enum MeasuringMethod {
  /**
   * A practised person measures another: ±1 cm on a girth (from memory of anthropometry practice;
   * the 1988 US Army survey allowed 10–15 mm on chest girths, from memory). Short lengths: scaled
   * by the ratio 5 : 9 that ISO 20685 allows for body segments against large girths (computed).
   */
  TAPE_TRAINED(10 / 1.96, 10 * 5 / 9.0 / 1.96),
  /**
   * A friend with a tape, who has not measured others before: ±1.5 cm on a girth, half way between
   * the practised and oneself (our inference); short lengths scaled likewise.
   */
  TAPE_HELPED(15 / 1.96, 15 * 5 / 9.0 / 1.96),
  /** Measuring oneself: ±2 cm on a girth (from memory); short lengths scaled likewise. */
  TAPE_SELF(20 / 1.96, 20 * 5 / 9.0 / 1.96),
  /**
   * A body scan. ISO 20685 allows a deviation of 9 mm (large girths) or 5 mm (segments) from an
   * expert's tape, and the expert deviates from the true value as well: both added in quadrature
   * (computed).
   */
  SCAN(Math.sqrt(2) * 9 / 1.96, Math.sqrt(2) * 5 / 1.96),
  /**
   * A professional anthropometrist: ISO 20685's 9 mm for large girths and 4 mm for breadths and
   * small girths (as quoted in Gupta and Zakaria, Anthropometry, Apparel Sizing and Design, p. 41),
   * which limit the mean difference there and are used as limits of one reading here.
   */
  EXPERT_TAPE(9 / 1.96, 4 / 1.96);

  private final double girthSdMm;
  private final double shortSdMm;

  MeasuringMethod(double girthSdMm, double shortSdMm) {
    this.girthSdMm = girthSdMm;
    this.shortSdMm = shortSdMm;
  }

  /** Error SD of a large girth, mm. */
  public double girthSdMm() {
    return girthSdMm;
  }

  /** Error SD of a length, a width or a small girth, mm. */
  public double shortSdMm() {
    return shortSdMm;
  }

  /** The name on the wire: "tape-trained". */
  public String wireName() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The method of this wire name, if there is one. */
  public static Optional<MeasuringMethod> named(String wireName) {
    return Arrays.stream(values()).filter(method -> method.wireName().equals(wireName)).findFirst();
  }
}
