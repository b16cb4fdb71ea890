package easewright.layout;

import java.util.List;

/**
 * Parts laid on a strip.
 *
 * @param width the strip's width
 * @param placed every part with its position
 */
public record Layout(double width, List<Placed> placed) {

  public Layout {
    placed = List.copyOf(placed);
  }

  /** The length of strip used. */
  public double length() {
    return placed.stream().mapToDouble(one -> one.y() + one.length()).max().orElse(0);
  }

  /** The part of the strip used that parts cover, a fraction; 0 without parts. */
  public double use() {
    double covered = placed.stream().mapToDouble(one -> one.part().area()).sum();
    return placed.isEmpty() ? 0 : covered / (width * length());
  }
}
