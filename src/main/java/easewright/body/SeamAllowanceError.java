package easewright.body;

/**
 * Error of seams across a girth that were sewn off their line: small per seam, but doubled and
 * multiplied by the number of seams.
 *
 * @param seams seams that cross the girth, one or more
 * @param plannedMm allowance drafted, in mm
 * @param sewnMm allowance sewn, in mm
 */
public record SeamAllowanceError(int seams, double plannedMm, double sewnMm) {

  /**
   * @throws IllegalArgumentException if there is no seam or an allowance is negative
   */
  public SeamAllowanceError {
    if (seams < 1) {
      throw new IllegalArgumentException("At least one seam crosses the girth.");
    }
    if (!(plannedMm >= 0) || !(sewnMm >= 0)) {
      throw new IllegalArgumentException("A seam allowance is zero or more.");
    }
  }

  /** Change of the girth in mm, 2·n·(planned − sewn): positive if the garment came out larger. */
  public double girthChangeMm() {
    return 2 * seams * (plannedMm - sewnMm);
  }
}
