package easewright.body;

/**
 * Pressure of a stretched band, from the law of Laplace for a cylinder: P = T/r = 2πT/C.
 *
 * @param tensionNPerCm tension in N per cm of band height
 * @param girthMm girth of the body under the band, in mm
 */
public record BandPressure(double tensionNPerCm, double girthMm) {

  // One conventional millimetre of mercury is 133.322 Pa.
  private static final double KPA_PER_MMHG = 0.133322;

  /**
   * @throws IllegalArgumentException if the tension is negative or the girth is not positive
   */
  public BandPressure {
    if (!(tensionNPerCm >= 0) || !(girthMm > 0)) {
      throw new IllegalArgumentException("The tension is zero or more, the girth above zero.");
    }
  }

  /** The band with a given mean pressure in kPa on a girth in mm. */
  public static BandPressure ofKPa(double kPa, double girthMm) {
    // 1 kPa·mm = 1 N/m = 0.01 N/cm
    return new BandPressure(kPa * girthMm / (2 * Math.PI) / 100, girthMm);
  }

  /** Mean pressure in kPa, as if the trunk were round. */
  public double kPa() {
    return kPaWhereRadiusIs(girthMm / (2 * Math.PI));
  }

  /** Mean pressure in millimetres of mercury. */
  public double mmHg() {
    return toMmHg(kPa());
  }

  /**
   * Pressure in kPa where the trunk curves with a radius in mm: more at the sides, less at front
   * and back. The band may not touch a hollow at all.
   */
  public double kPaWhereRadiusIs(double radiusMm) {
    if (!(radiusMm > 0)) {
      throw new IllegalArgumentException("A radius is above zero.");
    }
    return 100 * tensionNPerCm / radiusMm;
  }

  /** Kilopascals as millimetres of mercury. */
  public static double toMmHg(double kPa) {
    return kPa / KPA_PER_MMHG;
  }

  /** Millimetres of mercury as kilopascals. */
  public static double toKPa(double mmHg) {
    return mmHg * KPA_PER_MMHG;
  }
}
