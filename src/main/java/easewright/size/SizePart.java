package easewright.size;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A part of a cell whose bodies all have the same sizes.
 *
 * @param written the cell as written
 * @param closed the part, gaps of the tape's step closed
 * @param share of its bodies that count for this size: all, or with two sizes a half
 */
record SizePart(SizeCell written, SizeCell closed, double share) {

  /**
   * The parts of all cells. Where sizes overlap, a body in both is right in either, so each gets an
   * equal share.
   *
   * @param most maximum number of parts
   * @throws IllegalArgumentException if there are more
   */
  static List<SizePart> of(List<SizeCell> written, List<SizeCell> closed, int most) {
    List<SizePart> parts = new ArrayList<>();
    for (int i = 0; i < closed.size(); i++) {
      SizeCell cell = closed.get(i);
      List<SizeCell> others =
          closed.stream()
              .filter(other -> !other.id().equals(cell.id()) && other.overlaps(cell))
              .toList();
      List<Range> acrosses = cuts(cell.across(), others.stream().map(SizeCell::across).toList());
      for (Range under :
          cuts(cell.underbust(), others.stream().map(SizeCell::underbust).toList())) {
        for (Range across : acrosses) {
          SizeCell part = cell.with(under, across);
          long sizes =
              1 + others.stream().filter(part::overlaps).map(SizeCell::id).distinct().count();
          parts.add(new SizePart(written.get(i), part, 1.0 / sizes));
        }
      }
      if (parts.size() > most) {
        throw new IllegalArgumentException("the sizes overlap in more than " + most + " parts");
      }
    }
    return parts;
  }

  /** A range cut at every end of another within it. */
  private static List<Range> cuts(Range range, List<Range> others) {
    TreeSet<Double> ends = new TreeSet<>(List.of(range.loMm(), range.hiMm()));
    for (Range other : others) {
      for (double end : new double[] {other.loMm(), other.hiMm()}) {
        if (end > range.loMm() && end < range.hiMm()) {
          ends.add(end);
        }
      }
    }
    List<Range> cuts = new ArrayList<>();
    double from = ends.first();
    for (double to : ends.tailSet(from, false)) {
      cuts.add(Range.ofMm(from, to));
      from = to;
    }
    return cuts;
  }
}
