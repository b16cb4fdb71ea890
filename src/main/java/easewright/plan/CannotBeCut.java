package easewright.plan;

import easewright.pattern.Layer;

/** A piece does not fit the cloth it is to be cut from. */
public final class CannotBeCut extends RuntimeException {
  private final Layer cloth;
  private final String piece;
  private final double neededMm;

  CannotBeCut(Layer cloth, String piece, double neededMm) {
    super(null, null, false, false);
    this.cloth = cloth;
    this.piece = piece;
    this.neededMm = neededMm;
  }

  /** The layer whose cloth is too narrow. */
  public Layer cloth() {
    return cloth;
  }

  /** Name of the piece. */
  public String piece() {
    return piece;
  }

  /** The width it needs with the cloth laid as requested, in mm. */
  public double neededMm() {
    return neededMm;
  }
}
