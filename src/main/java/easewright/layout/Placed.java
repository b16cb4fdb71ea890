package easewright.layout;

/**
 * A part where it lies.
 *
 * @param part the part
 * @param x its left side, from the strip's left edge
 * @param y its lower side, from the strip's beginning
 * @param turned whether it lies turned by a quarter
 */
public record Placed(LaidPart part, double x, double y, boolean turned) {

  /** How far it reaches across the strip as it lies. */
  public double width() {
    return turned ? part.length() : part.width();
  }

  /** How far it reaches along the strip as it lies. */
  public double length() {
    return turned ? part.width() : part.length();
  }
}
