package easewright.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Elastic, strap tape or hardware.
 *
 * @param id kebab-case id
 * @param name what to ask for in a shop
 * @param kind trade term, e.g. "elastic"
 * @param widthMm its width, if it matters
 * @param of the finished measurement it is cut from; empty if its length is the same in every size,
 *     or it is counted
 * @param fraction how much of that measurement, a fraction
 * @param plusMm what is added for joining, in mm; the whole length if it is not cut from a
 *     measurement
 * @param times how many are cut or needed
 * @param when the choices under which it is needed
 * @param places the edges and lines it is sewn to, if the sheet states them
 * @param leftOut what changes when it is left out; empty if it is needed
 */
public record Trim(
    String id,
    String name,
    String kind,
    Optional<Double> widthMm,
    Optional<String> of,
    double fraction,
    double plusMm,
    int times,
    When when,
    List<Edge.Ref> places,
    Optional<String> leftOut) {

  /**
   * @throws IllegalArgumentException if it could not be cut as stated
   */
  public Trim {
    if (times < 1 || !(fraction > 0) || !(plusMm >= 0)) {
      throw new SheetRefusal("trim-of-nothing");
    }
    places = List.copyOf(places);
  }

  /** Length of each in mm, given finished measurements in mm; empty if it is only counted. */
  public Optional<Double> lengthMm(Map<String, Double> finishedMm) {
    return of.map(key -> finishedMm.get(key) * fraction + plusMm)
        .or(() -> plusMm > 0 ? Optional.of(plusMm) : Optional.empty());
  }
}
