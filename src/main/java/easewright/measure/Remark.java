package easewright.measure;

/**
 * A doubt about one measurement: it questions the tape or the entry, never the body.
 *
 * @param field wire name of the measurement: "bust", "underbust", "upperChest" …
 * @param kind whether the value is impossible, or only worth measuring again
 * @param problem one or two sentences: what does not fit together
 * @param remedy what to do, naming the likely mistake
 */
public record Remark(String field, Kind kind, String problem, String remedy) {
  /** Severity of the doubt. */
  public enum Kind {
    /** The value is impossible; the request cannot be answered with it. */
    IMPOSSIBLE,
    /** Rare enough to measure again; the answer is given anyway. */
    UNLIKELY
  }
}
