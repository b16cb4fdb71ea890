package easewright.body;

import java.util.List;

/**
 * Cloth pinched out at an edge, running to nothing at the apex or a seam.
 *
 * @param pinchMm cloth taken up at the edge, in full and not half, in mm
 * @param reachMm distance from the edge to where it runs to nothing, in mm
 */
public record Wedge(double pinchMm, double reachMm) {

  /**
   * @throws IllegalArgumentException if the pinch or reach is not above zero, or the pinch is wider
   *     than the wedge is long
   */
  public Wedge {
    if (!(pinchMm > 0) || !(reachMm > 0) || !Double.isFinite(reachMm)) {
      throw new IllegalArgumentException("Pinch and reach of a wedge must be above zero.");
    }
    if (pinchMm > reachMm) {
      throw new IllegalArgumentException("The pinch is wider than the wedge is long.");
    }
  }

  /** The angle at the point, in degrees; both legs have the reach as their length. */
  public double angleDegrees() {
    return Math.toDegrees(2 * Math.asin(pinchMm / 2 / reachMm));
  }

  /**
   * The wedge as it can be taken out: itself up to a limit, two of half its pinch up to twice the
   * limit, and none beyond, where the edge needs drafting anew.
   *
   * @param limitMm the most one wedge may take up, in mm
   */
  public List<Wedge> spread(double limitMm) {
    if (!(limitMm > 0)) {
      throw new IllegalArgumentException("The limit of a wedge is above zero.");
    }
    if (pinchMm <= limitMm) {
      return List.of(this);
    }
    Wedge half = new Wedge(pinchMm / 2, reachMm);
    return pinchMm <= 2 * limitMm ? List.of(half, half) : List.of();
  }
}
