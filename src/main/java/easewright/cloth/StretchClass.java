package easewright.cloth;

/**
 * Stretch classes of knits after Armstrong, Patternmaking for Fashion Design, ch. 27 (from memory):
 * 5 in stretch to 5 7/8 in (stable), 6 1/4 in (moderate), 7 1/2 in (stretchy), 10 in
 * (super-stretch) or further (rib). Ranges between those marks differ between authors; here a cloth
 * is in the highest class whose mark it reaches.
 */
public enum StretchClass {
  /** Stretches less than the handbook's stable knits. */
  BELOW_STABLE(0),
  /** From 17.5 %. */
  STABLE(0.175),
  /** From 25 %. */
  MODERATE(0.25),
  /** From 50 %. */
  STRETCHY(0.5),
  /** From 100 %. */
  SUPER_STRETCH(1),
  /** Beyond 100 %, as rib does. */
  RIB(1);

  // Lengths are converted from inches; rounding errors must not miss a mark.
  private static final double HAIR = 1e-9;

  private final double leastStretch;

  StretchClass(double leastStretch) {
    this.leastStretch = leastStretch;
  }

  /** The class of a stretch given as a fraction of the marked length, zero or more. */
  public static StretchClass of(double stretch) {
    if (stretch > RIB.leastStretch + HAIR) {
      return RIB;
    }
    StretchClass reached = BELOW_STABLE;
    for (StretchClass candidate : values()) {
      if (candidate != RIB && stretch >= candidate.leastStretch - HAIR) {
        reached = candidate;
      }
    }
    return reached;
  }
}
