package easewright.cloth;

import java.util.Optional;

/**
 * One pull on a marked length of cloth: as marked, as held at its working stretch, and after
 * release. Stretch, growth and recovery are fractions, defined as in ASTM D2594, ASTM D3107 and EN
 * 14704-1 but without their fixed loads: a hand pulls, and stops before the end stop.
 *
 * @param markedMm the marked length at rest, in mm
 * @param stretchedMm the same length held stretched, in mm
 * @param relaxedMm the same length after release, in mm; null if not read
 * @param readingSdMm standard deviation of one reading, in mm
 */
public record StretchTest(
    double markedMm, double stretchedMm, Double relaxedMm, double readingSdMm) {

  /** A ruler read by eye on soft cloth: 1 mm (common practice). */
  public static final double RULER_SD_MM = 1;

  // Bare elastomer yarn breaks at roughly 5 times its length; a knit never gets there.
  private static final double GREATEST_STRETCH = 5;

  /** A test read with a ruler, with an error of {@value #RULER_SD_MM} mm. */
  public StretchTest(double markedMm, double stretchedMm, Double relaxedMm) {
    this(markedMm, stretchedMm, relaxedMm, RULER_SD_MM);
  }

  /**
   * @throws ImpossibleCloth if no cloth could give these readings
   */
  public StretchTest {
    if (!(markedMm > 0) || !Double.isFinite(stretchedMm)) {
      throw new ImpossibleCloth("marked-length-of-zero");
    }
    if (!Double.isFinite(readingSdMm) || readingSdMm < 0) {
      throw new IllegalArgumentException("The reading error must be zero or more.");
    }
    if (stretchedMm < markedMm) {
      throw new ImpossibleCloth("stretched-shorter-than-marked");
    }
    if (stretchedMm > markedMm * (1 + GREATEST_STRETCH)) {
      throw new ImpossibleCloth("stretched-in-another-unit");
    }
    if (relaxedMm != null) {
      // Cloth can read slightly shorter than marked because both readings have errors.
      if (!(relaxedMm >= markedMm - 3 * Math.sqrt(2) * readingSdMm)) {
        throw new ImpossibleCloth("relaxed-shorter-than-marked");
      }
      if (relaxedMm > stretchedMm) {
        throw new ImpossibleCloth("relaxed-longer-than-stretched");
      }
    }
  }

  /** Stretch s = (L1 − L0) / L0, a fraction: 4 in pulled to 7 in is 0.75. */
  public Estimate stretch() {
    return extension(stretchedMm);
  }

  /** Growth (L2 − L0) / L0, a fraction; empty if the relaxed length was not read. */
  public Optional<Estimate> growth() {
    return Optional.ofNullable(relaxedMm).map(this::extension);
  }

  /**
   * Recovery (L1 − L2) / (L1 − L0), a fraction of the stretch; empty if the relaxed length was not
   * read or nothing was stretched.
   */
  public Optional<Estimate> recovery() {
    double pulled = stretchedMm - markedMm;
    if (relaxedMm == null || pulled == 0) {
      return Optional.empty();
    }
    double recovery = (stretchedMm - relaxedMm) / pulled;
    return Optional.of(
        Estimate.of(
            recovery,
            readingSdMm * recovery / pulled,
            readingSdMm * (1 - recovery) / pulled,
            readingSdMm / pulled));
  }

  private Estimate extension(double lengthMm) {
    // Subtracting first keeps 10 cm to 14 cm at exactly 40 %, on the limit rather than below it.
    return Estimate.of(
        (lengthMm - markedMm) / markedMm,
        readingSdMm / markedMm,
        readingSdMm * lengthMm / (markedMm * markedMm));
  }
}
