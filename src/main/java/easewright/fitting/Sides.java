package easewright.fitting;

import easewright.measure.Length;
import easewright.measure.Measured;
import easewright.measure.Measuring;
import java.util.List;

/**
 * The bust measured on each side, from the breastbone over the fullest part to the spine.
 *
 * @param larger "left" or "right"
 * @param byMm how much more the larger half measures
 * @param sdMm error of that difference, one standard deviation
 */
public record Sides(String larger, double byMm, double sdMm) {

  /** The two sides; null unless both were measured. */
  public static Sides of(Fitting fitting) {
    return of(half("bustLeft", fitting), half("bustRight", fitting));
  }

  /** The two halves compared; null unless both were measured. */
  public static Sides of(Measured left, Measured right) {
    if (left == null || right == null) {
      return null;
    }
    double more = left.differenceMm(right);
    return new Sides(more >= 0 ? "left" : "right", Math.abs(more), left.differenceSdMm(right));
  }

  /**
   * Whether the size follows the larger side: the sides differ by more than the error of the
   * difference and by enough to matter.
   */
  public boolean differ(double leastMm) {
    return byMm >= Math.max(leastMm, sdMm);
  }

  /**
   * The bust girth to find a size by: of a body as full on both sides as on the larger one, or the
   * sum of both halves where the sides do not differ.
   */
  public static Measured girth(Measured left, Measured right, double leastMm) {
    Sides sides = of(left, right);
    if (!sides.differ(leastMm)) {
      return new Measured(
          Length.ofMm(left.value().mm() + right.value().mm()),
          left.differenceSdMm(right),
          left.writtenIn());
    }
    Measured half = sides.larger().equals("left") ? left : right;
    return new Measured(Length.ofMm(2 * half.value().mm()), 2 * half.sdMm(), half.writtenIn());
  }

  /**
   * One half as it was measured; null if it was not.
   *
   * @param name wire name of the measurement, "bustLeft" or "bustRight"
   */
  public static Measured half(String name, Fitting fitting) {
    List<Measuring> taken = fitting.measuredHow().getOrDefault(name, List.of());
    return taken.isEmpty()
        ? null
        : Measured.combined(taken.stream().map(Measuring::reading).toList());
  }
}
