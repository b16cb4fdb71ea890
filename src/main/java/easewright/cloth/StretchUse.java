package easewright.cloth;

/**
 * The part of a cloth's stretch that a pattern uses in wear, and the resulting widths.
 *
 * @param fraction the part of the stretch used, 0 to 1
 */
public record StretchUse(double fraction) {

  /**
   * @throws IllegalArgumentException if the fraction is outside 0 to 1
   */
  public StretchUse {
    if (!(fraction >= 0 && fraction <= 1)) {
      throw new ImpossibleCloth("stretch-used-out-of-range");
    }
  }

  /**
   * How much smaller than the body a pattern is, as a fraction: 1 − 1/(1 + u·s).
   *
   * @param stretch the cloth's stretch as a fraction
   */
  public Estimate reduction(Estimate stretch) {
    double worn = worn(stretch.value());
    return Estimate.of(1 - 1 / worn, stretch.sd() * fraction / (worn * worn));
  }

  /**
   * Factor for the widths of a pattern with a cloth other than the one it was drafted for: (1 +
   * u·drafted)/(1 + u·actual). Above 1 the pattern must grow.
   *
   * @param draftedStretch the stretch drafted for, as a fraction
   * @param actualStretch the stretch at hand, as a fraction
   */
  public Estimate widthFactor(double draftedStretch, Estimate actualStretch) {
    double worn = worn(actualStretch.value());
    double factor = worn(draftedStretch) / worn;
    return Estimate.of(factor, actualStretch.sd() * fraction * factor / worn);
  }

  private double worn(double stretch) {
    if (!(stretch >= 0)) {
      throw new IllegalArgumentException("A stretch is zero or more.");
    }
    return 1 + fraction * stretch;
  }
}
