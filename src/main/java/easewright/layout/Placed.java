package easewright.layout;

/**
 * A part with its position.
 *
 * @param part the part
 * @param x its left side, from the strip's left edge
 * @param y its lower side, from the strip's beginning
 * @param turned whether it is turned by 90°
 */
public record Placed(LaidPart part, double x, double y, boolean turned) {

  /** Its extent across the strip as laid. */
  public double width() {
    return turned ? part.length() : part.width();
  }

  /** Its extent along the strip as laid. */
  public double length() {
    return turned ? part.width() : part.length();
  }
}
