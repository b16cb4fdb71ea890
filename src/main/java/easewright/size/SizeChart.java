package easewright.size;

import easewright.measure.Measured;
import easewright.size.ChartRow.Girths;
import easewright.size.ChartRow.Reached;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * The sizes of a pattern: bands by cups, or named sizes. Ranges must not overlap. Neighbouring
 * ranges in whole centimetres, "68–72" and "73–77", meet halfway, at 72.5.
 */
public final class SizeChart {
  /** A gap up to this, mm, is the tape's step rather than a missing size. */
  private static final double TAPE_STEP_MM = 10;

  private static final int MOST_CELLS = 400;

  private final List<SizeCell> cells;
  private final List<ChartRow> rows;
  private final Map<String, SizeCell> byBandAndCup = new HashMap<>();
  private final List<String> bands;
  private final List<String> cups;

  private SizeChart(List<SizeCell> cells) {
    this.cells = List.copyOf(cells);
    List<SizeCell> closed = closed(this.cells);
    refuseFaults(closed);
    Map<Range, ChartRow> byUnderbust = new LinkedHashMap<>();
    for (int i = 0; i < closed.size(); i++) {
      SizeCell cell = closed.get(i);
      ChartRow row =
          byUnderbust.computeIfAbsent(
              cell.underbust(), range -> new ChartRow(range, new ArrayList<>(), new ArrayList<>()));
      row.written().add(this.cells.get(i));
      row.closed().add(cell);
    }
    this.rows = List.copyOf(byUnderbust.values());
    this.bands =
        this.cells.stream()
            .sorted((a, b) -> Double.compare(a.underbust().loMm(), b.underbust().loMm()))
            .map(SizeCell::band)
            .distinct()
            .toList();
    this.cups = this.cells.stream().map(SizeCell::cup).filter(c -> c != null).distinct().toList();
    this.cells.forEach(cell -> byBandAndCup.put(key(cell.band(), cell.cup()), cell));
  }

  /**
   * A chart of these sizes. Cups rank in the order they first appear, smallest first.
   *
   * @throws IllegalArgumentException if there are none or over 400, ids repeat, ranges overlap, or
   *     some are defined by bust and some by difference
   */
  public static SizeChart of(List<SizeCell> cells) {
    return new SizeChart(cells);
  }

  /**
   * A grid of bands by cups, each cup a range of the difference between bust and measured
   * underbust; ids are "band cup".
   */
  public static SizeChart grid(
      LinkedHashMap<String, Range> bands, LinkedHashMap<String, Range> cups) {
    List<SizeCell> cells = new ArrayList<>();
    bands.forEach(
        (band, underbust) ->
            cups.forEach(
                (cup, difference) ->
                    cells.add(
                        SizeCell.ofDifference(
                            band + " " + cup, band, cup, underbust, difference))));
    return new SizeChart(cells);
  }

  /** All sizes as written. */
  public List<SizeCell> cells() {
    return cells;
  }

  /** The size of this id, if there is one. */
  public Optional<SizeCell> cell(String id) {
    return cells.stream().filter(cell -> cell.id().equals(id)).findFirst();
  }

  /** Whether the sizes have cups. */
  public boolean hasCups() {
    return !cups.isEmpty();
  }

  /**
   * The probability of each size: the true girths are assumed to be normal around the measured
   * ones, with independent errors and a flat prior.
   */
  public SizeEstimate estimate(Measured bust, Measured underbust) {
    List<SizeChance> chances = new ArrayList<>();
    Girths girths = girths(bust, underbust);
    for (ChartRow row : rows) {
      row.chances(girths, chances);
    }
    double inside = chances.stream().mapToDouble(SizeChance::probability).sum();
    return new SizeEstimate(chances, Math.max(0, 1 - inside));
  }

  /**
   * The most probable size, as from {@link #estimate}, but faster: integrates only sizes that may
   * be the most probable.
   */
  public Optional<SizeChance> best(Measured bust, Measured underbust) {
    Girths girths = girths(bust, underbust);
    List<Reached> promising = new ArrayList<>();
    rows.forEach(row -> row.reached(girths).ifPresent(promising::add));
    promising.sort(Comparator.comparingDouble(Reached::bound).reversed());
    SizeChance best = null;
    for (Reached row : promising) {
      double most = best == null ? 0 : best.probability();
      if (row.bound() > most) {
        best = row.best(most).orElse(best);
      }
    }
    return Optional.ofNullable(best);
  }

  private static Girths girths(Measured bust, Measured underbust) {
    return new Girths(bust.value().mm(), bust.sdMm(), underbust.value().mm(), underbust.sdMm());
  }

  /**
   * Sister sizes of a size: one band down with one cup up, then one band up with one cup down, if
   * the chart has them; empty for a chart without cups.
   */
  public List<SizeCell> sisters(SizeCell cell) {
    int band = bands.indexOf(cell.band());
    int cup = cups.indexOf(cell.cup());
    List<SizeCell> sisters = new ArrayList<>();
    if (band >= 0 && cup >= 0) {
      at(band - 1, cup + 1).ifPresent(sisters::add);
      at(band + 1, cup - 1).ifPresent(sisters::add);
    }
    return sisters;
  }

  /** Whether one size of this chart is not smaller than another in either band or cup. */
  public boolean isAtLeast(SizeCell one, SizeCell other) {
    return one.underbust().loMm() >= other.underbust().loMm()
        && (hasCups()
            ? cups.indexOf(one.cup()) >= cups.indexOf(other.cup())
            : one.across().loMm() >= other.across().loMm());
  }

  private Optional<SizeCell> at(int band, int cup) {
    return band < 0 || cup < 0 || band >= bands.size() || cup >= cups.size()
        ? Optional.empty()
        : Optional.ofNullable(byBandAndCup.get(key(bands.get(band), cups.get(cup))));
  }

  private static String key(String band, String cup) {
    return band + "\n" + cup;
  }

  private static List<SizeCell> closed(List<SizeCell> cells) {
    Map<Range, Range> underbusts = met(cells.stream().map(SizeCell::underbust).toList());
    // With cups, bust ranges of one band follow each other; without, those of all sizes do.
    Function<SizeCell, String> group = cell -> cell.cup() == null ? "" : cell.band();
    Map<String, List<Range>> across = new HashMap<>();
    cells.forEach(
        c -> across.computeIfAbsent(group.apply(c), g -> new ArrayList<>()).add(c.across()));
    Map<String, Map<Range, Range>> met = new HashMap<>();
    across.forEach((name, ranges) -> met.put(name, met(ranges)));
    return cells.stream()
        .map(c -> c.with(underbusts.get(c.underbust()), met.get(group.apply(c)).get(c.across())))
        .toList();
  }

  /** Ranges with small gaps between neighbours closed halfway. */
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

  private static void refuseFaults(List<SizeCell> cells) {
    if (cells.isEmpty() || cells.size() > MOST_CELLS) {
      throw new IllegalArgumentException("a chart has 1 to " + MOST_CELLS + " sizes");
    }
    Set<String> ids = new HashSet<>();
    for (int i = 0; i < cells.size(); i++) {
      SizeCell one = cells.get(i);
      if (!ids.add(one.id())) {
        throw new IllegalArgumentException("the chart names the size " + one.id() + " twice");
      }
      for (SizeCell other : cells.subList(0, i)) {
        if ((one.bust() != null && other.difference() != null)
            || (one.difference() != null && other.bust() != null)) {
          throw new IllegalArgumentException("a chart goes by bust or by difference throughout");
        }
        if (one.underbust().overlaps(other.underbust()) && one.across().overlaps(other.across())) {
          throw new IllegalArgumentException(
              "the sizes " + other.id() + " and " + one.id() + " overlap");
        }
      }
    }
  }
}
