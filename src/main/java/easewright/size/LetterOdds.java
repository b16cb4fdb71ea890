package easewright.size;

/** How often a size class read off a tape is the right one. */
public final class LetterOdds {
  private LetterOdds() {}

  /**
   * The probability that a class of this width (mm) is right, when the classed value is measured
   * with this error SD (mm) and its true value lies anywhere in the class: with z = width / sd, P =
   * 2Φ(z) − 1 − (2/z)(φ(0) − φ(z)) (computed). For a cup letter the SD is that of the difference of
   * two girths.
   */
  public static double right(double widthMm, double sdMm) {
    if (!(widthMm > 0) || !(sdMm > 0)) {
      throw new IllegalArgumentException("class width and error must be above zero");
    }
    double z = widthMm / sdMm;
    if (z < 1e-4) {
      return z * Normal.density(0); // the formula's limit; it cancels to noise this low
    }
    return 2 * Normal.below(z) - 1 - 2 / z * (Normal.density(0) - Normal.density(z));
  }
}
