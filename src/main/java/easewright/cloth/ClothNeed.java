package easewright.cloth;

/**
 * A pattern's requirements for one of its cloths, as fractions and grams per square metre.
 *
 * @param stretchAround minimum stretch around the body, a fraction
 * @param stretchAlong minimum stretch up and down the body, a fraction; null if not known
 * @param recovery minimum recovery, a fraction; null if the pattern requires none
 * @param lightestGsm lightest cloth in g/m²; null if not limited
 * @param heaviestGsm heaviest cloth in g/m²; null if not limited
 * @param use how much of the stretch around the body the draft uses
 */
public record ClothNeed(
    double stretchAround,
    Double stretchAlong,
    Double recovery,
    Double lightestGsm,
    Double heaviestGsm,
    StretchUse use) {

  /**
   * @throws IllegalArgumentException with one sentence, if no cloth could meet the need
   */
  public ClothNeed {
    if (!(stretchAround >= 0) || stretchAlong != null && !(stretchAlong >= 0)) {
      throw new ImpossibleCloth("needed-stretch-below-zero");
    }
    if (recovery != null && !(recovery >= 0 && recovery <= 1)) {
      throw new ImpossibleCloth("needed-recovery-out-of-range");
    }
    if (lightestGsm != null && !(lightestGsm > 0) || heaviestGsm != null && !(heaviestGsm > 0)) {
      throw new ImpossibleCloth("weight-of-zero");
    }
    if (lightestGsm != null && heaviestGsm != null && lightestGsm > heaviestGsm) {
      throw new ImpossibleCloth("lightest-heavier-than-heaviest");
    }
    if (use == null) {
      throw new ImpossibleCloth("stretch-used-unsaid");
    }
  }
}
