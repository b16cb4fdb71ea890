package easewright.measure;

/**
 * A doubt about one measurement: the tape or the writing is in question, never the body.
 *
 * @param field wire name of the measurement: "bust", "underbust", "upperChest" …
 * @param kind whether the value can't be meant, or is only worth measuring again
 * @param problem one sentence or two: what does not go together
 * @param remedy what to do, naming the likely slip
 */
public record Remark(String field, Kind kind, String problem, String remedy) {
  /** How sure the doubt is. */
  public enum Kind {
    /** No such measurement can have been meant; the request can't be answered with it. */
    IMPOSSIBLE,
    /** Rare enough to measure again; the answer stands meanwhile. */
    UNLIKELY
  }
}
