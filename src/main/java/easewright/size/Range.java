package easewright.size;

/**
 * Millimetres above {@code lo}, up to and including {@code hi}: the class edges of EN 13402, where
 * "12–14" means more than 12 and at most 14 cm. Either end may be infinite.
 */
public record Range(double loMm, double hiMm) {
  /** No limit at all. */
  public static final Range ANY = new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Rounding errors of sums of decimal lengths are less than this; finer than any tape. */
  private static final double SLACK_MM = 1e-6;

  public Range {
    if (!(loMm < hiMm)) {
      throw new IllegalArgumentException("a range must end above its start");
    }
  }

  public static Range ofMm(double lo, double hi) {
    return new Range(lo, hi);
  }

  public static Range ofCm(double lo, double hi) {
    return new Range(lo * 10, hi * 10);
  }

  /** Whether the value, mm, lies above the start and at or below the end. */
  public boolean contains(double mm) {
    return mm > loMm + SLACK_MM && mm <= hiMm + SLACK_MM;
  }

  /** Whether the two share more than an edge. */
  public boolean overlaps(Range other) {
    return Math.min(hiMm, other.hiMm) - Math.max(loMm, other.loMm) > SLACK_MM;
  }
}
