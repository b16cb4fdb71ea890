package easewright.fitting;

import java.util.Collections;
import java.util.List;

/**
 * A sign that was looked for.
 *
 * @param id the sign's id in the catalog
 * @param present true when it was seen or felt, false when it was looked for and not found
 * @param place where, one of the catalog's places; null when not said
 * @param side "left", "right" or "both" as the wearer names them; null when not said
 * @param degree "slight", "clear" or "strong"; null when not said
 * @param amount how much; null when not measured
 * @param when when it shows, such as "after-an-hour"; empty when not said
 * @param sure probability, above 0 up to 1, that the wearer meant this sign at all; less than 1
 *     where a text was read that may mean something else
 */
public record ReportedSign(
    String id,
    boolean present,
    String place,
    String side,
    String degree,
    GivenAmount amount,
    List<String> when,
    double sure) {
  private static final String ALWAYS = "always";

  public ReportedSign {
    when = List.copyOf(when);
    if (!(sure > 0 && sure <= 1)) {
      throw new IllegalArgumentException(
          "How sure %s is must be above 0 and at most 1, not %s.".formatted(id, sure));
    }
  }

  /** A sign that was surely meant. */
  public ReportedSign(
      String id,
      boolean present,
      String place,
      String side,
      String degree,
      GivenAmount amount,
      List<String> when) {
    this(id, present, place, side, degree, amount, when, 1);
  }

  /** Whether it was seen on one side and not said of the other. */
  public boolean oneSided() {
    return "left".equals(side) || "right".equals(side);
  }

  /** Whether both speak of the same sign at the same spot and time, as far as either says. */
  public boolean overlaps(ReportedSign other) {
    return id.equals(other.id)
        && (place == null || other.place == null || place.equals(other.place))
        && (!oneSided() || !other.oneSided() || side.equals(other.side))
        && (anyTime() || other.anyTime() || !Collections.disjoint(when, other.when));
  }

  private boolean anyTime() {
    return when.isEmpty() || when.contains(ALWAYS);
  }
}
