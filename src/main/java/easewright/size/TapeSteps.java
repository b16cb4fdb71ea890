package easewright.size;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Closes the gaps between ranges in whole centimetres, "68–72" and "73–77", halfway. */
final class TapeSteps {
  /** A gap up to this, mm, is the tape's step rather than a missing size. */
  private static final double TAPE_STEP_MM = 10;

  private TapeSteps() {}

  static List<SizeCell> closed(List<SizeCell> cells) {
    Map<String, Long> ofSize =
        cells.stream().collect(Collectors.groupingBy(SizeCell::id, Collectors.counting()));
    Map<Range, Range> underbusts = met(cells.stream().map(SizeCell::underbust).toList());
    // With cups, bust ranges of one band follow each other; without, those of all sizes do, but
    // those of sizes with several cells only among the same underbusts.
    Function<SizeCell, String> group =
        cell ->
            cell.cup() != null
                ? cell.band()
                : ofSize.get(cell.id()) > 1 ? cell.underbust().toString() : "";
    Map<String, List<Range>> across = new HashMap<>();
    cells.forEach(
        c -> across.computeIfAbsent(group.apply(c), g -> new ArrayList<>()).add(c.across()));
    Map<String, Map<Range, Range>> met = new HashMap<>();
    across.forEach((name, ranges) -> met.put(name, met(ranges)));
    return cells.stream()
        .map(c -> c.with(underbusts.get(c.underbust()), met.get(group.apply(c)).get(c.across())))
        .toList();
  }

  private static Map<Range, Range> met(Collection<Range> ranges) {
    TreeSet<Range> ordered =
        new TreeSet<>(
            (a, b) ->
                a.loMm() != b.loMm()
                    ? Double.compare(a.loMm(), b.loMm())
                    : Double.compare(a.hiMm(), b.hiMm()));
    ordered.addAll(ranges);
    Map<Range, Range> met = new HashMap<>();
    for (Range range : ordered) {
      Range before = ordered.lower(range);
      Range after = ordered.higher(range);
      double lo = before == null ? range.loMm() : meet(before.hiMm(), range.loMm(), range.loMm());
      double hi = after == null ? range.hiMm() : meet(range.hiMm(), after.loMm(), range.hiMm());
      met.put(range, Range.ofMm(lo, hi));
    }
    return met;
  }

  private static double meet(double end, double start, double otherwise) {
    double gap = start - end;
    return gap > 0 && gap <= TAPE_STEP_MM ? end + gap / 2 : otherwise;
  }
}
