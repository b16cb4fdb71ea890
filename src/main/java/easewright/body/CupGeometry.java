package easewright.body;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * One cup as a spherical cap standing on a round base. Both cups together lengthen the tape by the
 * girth difference, so each arc over the apex is longer than its base by half of it. Nobody is
 * shaped like a cap: the model says how height and volume follow a change, not what a body is.
 *
 * @param baseMm width of the base, in mm
 * @param projectionMm height of the apex above the base, in mm
 */
public record CupGeometry(double baseMm, double projectionMm) {

  // Beyond three base radii a cap is a ball on a stalk and the model does not apply.
  private static final double DEEPEST = 3;

  private static final double SOLVER_ACCURACY = 1e-12;

  /**
   * @throws IllegalArgumentException if a size is not positive or the cup is deeper than the model
   *     allows
   */
  public CupGeometry {
    if (!(baseMm > 0) || !Double.isFinite(baseMm) || !(projectionMm > 0)) {
      throw new IllegalArgumentException("Base width and projection must be above zero.");
    }
    if (projectionMm > DEEPEST * baseMm / 2 * (1 + 1e-9)) {
      throw new IllegalArgumentException("The cup is deeper than one and a half base widths.");
    }
  }

  /**
   * The cap for a base width and a difference between bust and underbust girths.
   *
   * @param baseMm width of the base, in mm
   * @param differenceMm bust girth minus underbust girth, in mm
   * @throws IllegalArgumentException if no cap in the model's range has such an arc
   */
  public static CupGeometry fromDifference(double baseMm, double differenceMm) {
    if (!(baseMm > 0) || !(differenceMm > 0)) {
      throw new IllegalArgumentException("Base width and girth difference must be above zero.");
    }
    double wanted = (baseMm + differenceMm / 2) / (baseMm / 2);
    if (wanted > arcPerRadius(DEEPEST)) {
      throw new IllegalArgumentException(
          "The girth difference is too great for so narrow a base: measure both again.");
    }
    double flattest = 1e-6;
    double depth =
        wanted <= arcPerRadius(flattest)
            ? flattest
            : new BrentSolver(SOLVER_ACCURACY)
                .solve(200, t -> arcPerRadius(t) - wanted, flattest, DEEPEST);
    return new CupGeometry(baseMm, depth * baseMm / 2);
  }

  /** Length of the arc over the apex, base edge to base edge, in mm. */
  public double arcMm() {
    return arcPerRadius(depth()) * baseMm / 2;
  }

  /** Bust girth minus underbust girth for two such cups, in mm. */
  public double differenceMm() {
    return 2 * (arcMm() - baseMm);
  }

  /** Volume of one cup in ml: πh(3a² + h²)/6. */
  public double volumeMl() {
    double a = baseMm / 2;
    return Math.PI * projectionMm * (3 * a * a + projectionMm * projectionMm) / 6 / 1000;
  }

  /**
   * Change of the arc over the apex in mm, per mm of girth difference, at constant base width. The
   * vertical arc is the same: this is the height that a seam over the apex gains. It is the same
   * for every cap, since arc = base + difference/2.
   */
  public static double arcPerDifference() {
    return 0.5;
  }

  /** Change of the projection in mm, per mm of girth difference, at constant base width. */
  public double projectionPerDifference() {
    double t = depth();
    double arcPerProjection = 2 * ((1 - 1 / (t * t)) * Math.atan(t) + 1 / t);
    return arcPerDifference() / arcPerProjection;
  }

  private double depth() {
    return projectionMm / (baseMm / 2);
  }

  // Arc over base radius for a cap of depth t = h/a: the half angle is 2·atan t, the sphere's
  // radius a(1 + t²)/2t.
  private static double arcPerRadius(double t) {
    return 2 * (1 + t * t) / t * Math.atan(t);
  }
}
