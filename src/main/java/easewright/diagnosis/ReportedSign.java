package easewright.diagnosis;

import easewright.measure.Length;

/**
 * A sign that was looked for.
 *
 * @param id the sign's id in the catalog
 * @param present true when it was seen or felt, false when it was looked for and not found
 * @param place where, one of the catalog's places; null when not said
 * @param side "left", "right" or "both" as the wearer names them; null when not said
 * @param degree "slight", "clear" or "strong"; null when not said
 * @param amount how much, always in full; null when not measured
 */
public record ReportedSign(
    String id, boolean present, String place, String side, String degree, Length amount) {

  /** Whether it was seen on one side and not said of the other. */
  public boolean oneSided() {
    return "left".equals(side) || "right".equals(side);
  }

  /** Whether both speak of the same sign at the same spot, as far as either says where. */
  public boolean overlaps(ReportedSign other) {
    return id.equals(other.id)
        && (place == null || other.place == null || place.equals(other.place))
        && (!oneSided() || !other.oneSided() || side.equals(other.side));
  }
}
