package easewright.size;

import java.util.Objects;

/**
 * One size of a chart: its underbust, and either the bust, or the difference between bust and
 * underbust, or neither (a band sold by underbust alone).
 *
 * @param id name of the size; unique in its chart, unless the size has several cells
 * @param band label of the band, or the size's name if there are no cups
 * @param cup label of the cup, {@code null} if the chart has none
 * @param underbust girth range; {@link Range#ANY} if the size is defined by bust alone
 * @param bust girth range, or {@code null}
 * @param difference range of bust minus measured underbust, or {@code null}
 */
public record SizeCell(
    String id, String band, String cup, Range underbust, Range bust, Range difference) {
  public SizeCell {
    Objects.requireNonNull(id, "a size needs an id");
    Objects.requireNonNull(band, "a size needs a band or a name");
    Objects.requireNonNull(underbust, "a size needs an underbust range, if only \"any\"");
    if (bust != null && difference != null) {
      throw new IllegalArgumentException("a size goes by bust or by difference, not by both");
    }
  }

  /** A size without cups, "M": ranges of underbust and bust. */
  public static SizeCell named(String name, Range underbust, Range bust) {
    return new SizeCell(name, name, null, underbust, bust, null);
  }

  /** A band and cup defined by the bust girth. */
  public static SizeCell ofBust(String id, String band, String cup, Range underbust, Range bust) {
    return new SizeCell(id, band, cup, underbust, bust, null);
  }

  /** A band and cup defined by the difference between bust and measured underbust. */
  public static SizeCell ofDifference(
      String id, String band, String cup, Range underbust, Range difference) {
    return new SizeCell(id, band, cup, underbust, null, difference);
  }

  /** The range of the second dimension, or {@link Range#ANY}. */
  Range across() {
    return bust != null ? bust : difference != null ? difference : Range.ANY;
  }

  /** The bust girths from the smallest to the largest; {@link Range#ANY} for a band alone. */
  public Range bustGirths() {
    if (bust != null) {
      return bust;
    }
    return difference == null
        ? Range.ANY
        : Range.ofMm(underbust.loMm() + difference.loMm(), underbust.hiMm() + difference.hiMm());
  }

  /** Whether it is for a body with these girths, mm. */
  boolean contains(double underbustMm, double bustMm) {
    return underbust.contains(underbustMm)
        && across().contains(difference == null ? bustMm : bustMm - underbustMm);
  }

  /** Whether the two share more than an edge. */
  boolean overlaps(SizeCell other) {
    return underbust.overlaps(other.underbust) && across().overlaps(other.across());
  }

  SizeCell with(Range otherUnderbust, Range otherAcross) {
    return new SizeCell(
        id,
        band,
        cup,
        otherUnderbust,
        bust == null ? null : otherAcross,
        difference == null ? null : otherAcross);
  }
}
