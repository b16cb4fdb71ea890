package easewright.plan;

import easewright.measure.ArealWeight;

/**
 * A cloth to cut from.
 *
 * @param widthMm its usable width without selvedges, after washing, in mm
 * @param lay how it is laid for cutting
 * @param napOneWay whether pile or print must run one way on every piece
 * @param stretch where its greatest stretch runs
 * @param shrinkage how much of its length it loses in the wash, a fraction; null if unknown
 * @param weight its weight; null if unknown
 */
public record Cloth(
    double widthMm,
    Lay lay,
    boolean napOneWay,
    GreatestStretch stretch,
    Double shrinkage,
    ArealWeight weight) {

  /**
   * @throws IllegalArgumentException if no such cloth can exist
   */
  public Cloth {
    if (!(widthMm > 0)) {
      throw new IllegalArgumentException("A cloth has a width above zero.");
    }
    if (shrinkage != null && !(shrinkage >= 0 && shrinkage < 1)) {
      throw new IllegalArgumentException("A cloth shrinks by less than the whole of it.");
    }
  }

  /** How a cloth is laid for cutting. */
  public enum Lay {
    /** Folded lengthwise, selvedge on selvedge. */
    FOLDED,
    /** In a single layer over its whole width. */
    OPEN,
    /** Whichever needs less of it. */
    EITHER
  }

  /** Where the greatest stretch of a cloth runs. */
  public enum GreatestStretch {
    /** From selvedge to selvedge. */
    CROSSWISE,
    /** Along the selvedge. */
    LENGTHWISE,
    /** Equal in both directions. */
    BOTH
  }
}
