package easewright.body;

import easewright.cloth.Estimate;

/**
 * A band on the body it goes around.
 *
 * @param bodyMm girth of the body under the band, in mm
 * @param garmentMm finished girth of the band at rest, in mm
 * @param bodySdMm standard deviation of the body girth, in mm
 * @param garmentSdMm standard deviation of the band girth, in mm
 */
public record BandFit(double bodyMm, double garmentMm, double bodySdMm, double garmentSdMm) {

  /**
   * @throws IllegalArgumentException if a girth is not positive or an error is negative
   */
  public BandFit {
    if (!(bodyMm > 0) || !(garmentMm > 0)) {
      throw new IllegalArgumentException("Body and band girth must be above zero.");
    }
    if (!(bodySdMm >= 0) || !(garmentSdMm >= 0)) {
      throw new IllegalArgumentException("The error of a girth is zero or more.");
    }
  }

  /**
   * A band known only from how far a light pull draws it off the body at one place. The band then
   * runs straight from the point held to where it touches the body, modelled as a circle; a pull
   * that stretches the band makes it seem longer, so this is the maximum length. The errors of body
   * and band are assumed to be independent, which overstates the error.
   *
   * @param bodyMm girth of the body, in mm
   * @param gapMm distance between body and band at the point held, in mm
   * @param bodySdMm standard deviation of the body girth, in mm
   * @param gapSdMm standard deviation of the gap, in mm
   */
  public static BandFit fromPullOff(double bodyMm, double gapMm, double bodySdMm, double gapSdMm) {
    double slackMm = pullOffSlackMm(bodyMm, gapMm);
    // d(slack)/d(gap) = 2·sin θ, where θ is the angle between the point held and the touching point
    double cosine = bodyMm / (bodyMm + 2 * Math.PI * gapMm);
    double perGap = 2 * Math.sqrt(1 - cosine * cosine);
    return new BandFit(bodyMm, bodyMm + slackMm, bodySdMm, Math.hypot(bodySdMm, perGap * gapSdMm));
  }

  /**
   * How much longer than the body a band is if it can be drawn off by a gap, in mm: 2r(tan θ − θ)
   * with cos θ = r/(r + gap).
   *
   * @throws IllegalArgumentException if the girth is not positive or the gap is negative
   */
  public static double pullOffSlackMm(double bodyMm, double gapMm) {
    if (!(bodyMm > 0) || !(gapMm >= 0) || !Double.isFinite(gapMm)) {
      throw new IllegalArgumentException("The girth is above zero, the gap zero or more.");
    }
    double radius = bodyMm / (2 * Math.PI);
    double straight = Math.sqrt(gapMm * (2 * radius + gapMm));
    return 2 * (straight - radius * Math.atan(straight / radius));
  }

  /** Strain e = (body − garment)/garment, a fraction; negative if the band is longer. */
  public Estimate strain() {
    return Estimate.of(
        (bodyMm - garmentMm) / garmentMm,
        bodySdMm / garmentMm,
        garmentSdMm * bodyMm / (garmentMm * garmentMm));
  }

  /**
   * Total cloth to take in, in mm, to reach a strain in wear: L − U/(1 + e). Negative means cloth
   * to let out.
   *
   * @param targetStrain the target strain, a fraction above −1
   */
  public Estimate takeInMm(double targetStrain) {
    if (!(targetStrain > -1)) {
      throw new IllegalArgumentException("A strain lies above −100 %.");
    }
    double worn = 1 + targetStrain;
    return Estimate.of(garmentMm - bodyMm / worn, garmentSdMm, bodySdMm / worn);
  }
}
