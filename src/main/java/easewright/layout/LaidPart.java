package easewright.layout;

/**
 * A rectangle to lay.
 *
 * @param id what it is called; several parts may bear one id
 * @param width its width across the strip, in any one unit of length
 * @param length its length along the strip, in the same unit
 * @param turnable whether it may lie turned by a quarter
 * @param atEdge whether it must touch the strip's left edge, where the fold is
 */
public record LaidPart(String id, double width, double length, boolean turnable, boolean atEdge) {

  /**
   * @throws IllegalArgumentException unless it has a size, or if it is to be turned at the edge
   */
  public LaidPart {
    if (!(width > 0 && length > 0 && Double.isFinite(width) && Double.isFinite(length))) {
      throw new IllegalArgumentException("A part has a width and a length above zero.");
    }
    if (turnable && atEdge) {
      throw new IllegalArgumentException("A part that lies at the edge cannot be turned.");
    }
  }

  /** Its area. */
  public double area() {
    return width * length;
  }

  /** The narrowest strip it can lie on. */
  public double narrowest() {
    return turnable ? Math.min(width, length) : width;
  }
}
