package easewright.cloth;

/**
 * An elastic with a weight hung from it. Tension is assumed to be proportional to extension, which
 * is true for worn extensions (some 10 to 30 %) but not near the end stop.
 *
 * @param widthMm width of the elastic, in mm
 * @param relaxedMm marked length at rest, in mm
 * @param stretchedMm the same length under the weight, in mm
 * @param loadN the force of the weight, in N (100 g weigh 0.981 N)
 * @param fullMm the same length pulled to its end stop, in mm; null if not tested
 */
public record ElasticTest(
    double widthMm, double relaxedMm, double stretchedMm, double loadN, Double fullMm) {

  /**
   * @throws ImpossibleCloth if no elastic could give these readings
   */
  public ElasticTest {
    if (!(widthMm > 0) || !(relaxedMm > 0) || !(loadN > 0) || !Double.isFinite(loadN)) {
      throw new ImpossibleCloth("elastic-of-zero");
    }
    if (!(stretchedMm > relaxedMm) || !Double.isFinite(stretchedMm)) {
      throw new ImpossibleCloth("weight-that-stretches-nothing");
    }
    if (fullMm != null && !(fullMm >= stretchedMm)) {
      throw new ImpossibleCloth("end-stop-before-the-weight");
    }
  }

  /** The extension under the weight, a fraction. */
  public double testedExtension() {
    return stretchedMm / relaxedMm - 1;
  }

  /**
   * The greatest extension to wear, a fraction: half the elastic's stretch. Without a reading of
   * the end stop, the weighted extension is used instead, which errs on the safe side.
   */
  public double limit() {
    return ((fullMm == null ? stretchedMm : fullMm) / relaxedMm - 1) / 2;
  }

  /**
   * Tension in N per cm of width at an extension, with the error of reading both lengths to {@value
   * StretchTest#RULER_SD_MM} mm.
   *
   * @param extension a fraction of the relaxed length, zero or more
   */
  public Estimate tensionNPerCm(double extension) {
    if (!(extension >= 0)) {
      throw new IllegalArgumentException("An extension is zero or more.");
    }
    double pulledMm = stretchedMm - relaxedMm;
    double tension = loadN / (widthMm / 10) * extension / testedExtension();
    double perMm = StretchTest.RULER_SD_MM / pulledMm;
    return Estimate.of(tension, tension * perMm, tension * perMm * stretchedMm / relaxedMm);
  }

  /**
   * The extension, a fraction, that gives a tension in N per cm of width.
   *
   * @throws IllegalArgumentException if the tension is negative
   */
  public double extensionAt(double tensionNPerCm) {
    if (!(tensionNPerCm >= 0)) {
      throw new IllegalArgumentException("A tension is zero or more.");
    }
    return tensionNPerCm * (widthMm / 10) / loadN * testedExtension();
  }

  /**
   * Length to cut in mm: girth/(1 + extension) + joining.
   *
   * @param girthMm the body girth the elastic goes around, in mm
   * @param extension the extension in wear, a fraction
   * @param joiningMm total allowance of the join, in mm
   * @throws IllegalArgumentException if the extension exceeds {@link #limit()}
   */
  public double cutLengthMm(double girthMm, double extension, double joiningMm) {
    if (!(girthMm > 0) || !(joiningMm >= 0)) {
      throw new IllegalArgumentException("The girth is above zero, the join zero or more.");
    }
    if (!(extension >= 0 && extension <= limit())) {
      throw new IllegalArgumentException(
          "The extension in wear lies between zero and half the elastic's stretch.");
    }
    return girthMm / (1 + extension) + joiningMm;
  }
}
