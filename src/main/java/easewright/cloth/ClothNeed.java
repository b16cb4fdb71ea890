package easewright.cloth;

/**
 * A pattern's requirements for one of its cloths, as fractions and grams per square metre.
 *
 * @param stretchAround minimum stretch around the body, a fraction
 * @param stretchAlong minimum stretch up and down the body, a fraction
 * @param recovery minimum recovery, a fraction; null if the pattern requires none
 * @param lightestGsm lightest cloth in g/m²; null if not limited
 * @param heaviestGsm heaviest cloth in g/m²; null if not limited
 * @param use how much of the stretch around the body the draft uses
 */
public record ClothNeed(
    double stretchAround,
    double stretchAlong,
    Double recovery,
    Double lightestGsm,
    Double heaviestGsm,
    StretchUse use) {

  /**
   * @throws IllegalArgumentException with one sentence, if no cloth could meet the need
   */
  public ClothNeed {
    if (!(stretchAround >= 0) || !(stretchAlong >= 0)) {
      throw new IllegalArgumentException("A needed stretch is zero or more.");
    }
    if (recovery != null && !(recovery >= 0 && recovery <= 1)) {
      throw new IllegalArgumentException("A needed recovery lies between 0 and 100 %.");
    }
    if (lightestGsm != null && !(lightestGsm > 0) || heaviestGsm != null && !(heaviestGsm > 0)) {
      throw new IllegalArgumentException("The weight of a cloth is above zero.");
    }
    if (lightestGsm != null && heaviestGsm != null && lightestGsm > heaviestGsm) {
      throw new IllegalArgumentException("The lightest cloth is heavier than the heaviest.");
    }
    if (use == null) {
      throw new IllegalArgumentException("A need says how much of the stretch is used.");
    }
  }
}
