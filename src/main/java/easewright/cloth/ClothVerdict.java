package easewright.cloth;

import java.util.Optional;

/**
 * A cloth compared with a requirement, as numbers: each margin is the cloth's value minus the
 * requirement, negative if it falls short, empty if untested or not required.
 *
 * @param around margin of stretch around the body, a fraction
 * @param along margin of stretch up and down the body, a fraction
 * @param recovery margin of recovery, a fraction
 * @param weightGsm distance inside the weight window in g/m², to its nearer end
 * @param widthFactor factor for the pattern's widths with this cloth
 */
public record ClothVerdict(
    Estimate around,
    Optional<Estimate> along,
    Optional<Estimate> recovery,
    Optional<Double> weightGsm,
    Estimate widthFactor) {

  /**
   * The verdict on a tested cloth.
   *
   * @param weightGsm weight of the cloth in g/m², null if unknown
   */
  public static ClothVerdict of(ClothTest test, ClothNeed need, Double weightGsm) {
    Estimate stretch = test.around().stretch();
    return new ClothVerdict(
        stretch.minus(need.stretchAround()),
        Optional.ofNullable(test.along()).map(t -> t.stretch().minus(need.stretchAlong())),
        need.recovery() == null
            ? Optional.empty()
            : test.recovery().map(r -> r.minus(need.recovery())),
        weightMargin(need, weightGsm),
        need.use().widthFactor(need.stretchAround(), stretch));
  }

  private static Optional<Double> weightMargin(ClothNeed need, Double weightGsm) {
    if (weightGsm == null || need.lightestGsm() == null && need.heaviestGsm() == null) {
      return Optional.empty();
    }
    double above = need.lightestGsm() == null ? Double.MAX_VALUE : weightGsm - need.lightestGsm();
    double below = need.heaviestGsm() == null ? Double.MAX_VALUE : need.heaviestGsm() - weightGsm;
    return Optional.of(Math.min(above, below));
  }
}
