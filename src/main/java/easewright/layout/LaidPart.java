package easewright.layout;

/**
 * A rectangle to lay.
 *
 * @param id its id; several parts may have the same id
 * @param width its width across the strip, in any one unit of length
 * @param length its length along the strip, in the same unit
 * @param turnable whether it may be turned by 90°
 * @param atEdge whether it must touch the strip's left edge, where the fold is
 */
public record LaidPart(String id, double width, double length, boolean turnable, boolean atEdge) {

  /**
   * @throws IllegalArgumentException if its size is not positive, or it may be turned at the edge
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
