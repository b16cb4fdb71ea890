package easewright.size;

import easewright.measure.Measured;
import easewright.size.ChartRow.Girths;
import easewright.size.ChartRow.Reached;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The sizes of a pattern: bands by cups, or named sizes. Neighbouring ranges in whole centimetres,
 * "68–72" and "73–77", meet halfway, at 72.5.
 */
public final class SizeChart {
  /** Maximum number of cells. */
  public static final int MOST_CELLS = 400;

  /** Maximum number of parts that overlaps may cut the cells into. */
  private static final int MOST_PARTS = 1200;

  private final List<SizeCell> cells;
  private final List<ChartRow> rows;
  private final SizeOrder order;

  /**
   * Whether each size is one cell with bodies of its own, so that one cell can be most probable.
   */
  private final boolean simple;

  private SizeChart(List<SizeCell> cells, List<SizePart> parts) {
    this.cells = List.copyOf(cells);
    this.order = new SizeOrder(this.cells);
    this.simple =
        parts.size() == cells.size()
            && cells.stream().map(SizeCell::id).distinct().count() == cells.size();
    Map<Range, ChartRow> byUnderbust = new LinkedHashMap<>();
    for (SizePart part : parts) {
      byUnderbust
          .computeIfAbsent(
              part.closed().underbust(), range -> new ChartRow(range, new ArrayList<>()))
          .parts()
          .add(part);
    }
    this.rows = List.copyOf(byUnderbust.values());
  }

  /**
   * A chart of these sizes. Cups rank in the order they first appear, smallest first.
   *
   * @throws IllegalArgumentException if there are none or over 400, ids repeat, ranges overlap, or
   *     some are defined by bust and some by difference
   */
  public static SizeChart of(List<SizeCell> cells) {
    List<SizeCell> closed = TapeSteps.closed(cells);
    refuseFaults(closed);
    return new SizeChart(cells, SizePart.of(cells, closed, MOST_CELLS));
  }

  /**
   * A chart whose sizes may have several cells, each of the size's name, and may share bodies: a
   * body in two sizes is as right in either.
   *
   * @throws IllegalArgumentException if there are no cells or over 400, or they overlap in too many
   *     parts
   */
  public static SizeChart sharing(List<SizeCell> cells) {
    refuseCount(cells);
    return new SizeChart(cells, SizePart.of(cells, TapeSteps.closed(cells), MOST_PARTS));
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
    return of(cells);
  }

  /** All cells as written. */
  public List<SizeCell> cells() {
    return cells;
  }

  /** The size of this id, if there is one; of several cells the first. */
  public Optional<SizeCell> cell(String id) {
    return cells.stream().filter(cell -> cell.id().equals(id)).findFirst();
  }

  /** Whether the sizes have cups. */
  public boolean hasCups() {
    return order.hasCups();
  }

  /** Whether the bust alone decides, whatever the underbust. */
  public boolean goesByBustAlone() {
    return cells.stream().allMatch(cell -> cell.underbust().equals(Range.ANY));
  }

  /** The ids of the sizes that are for these girths, in the order of the chart. */
  public List<String> holding(Measured bust, Measured underbust) {
    Girths girths = girths(bust, underbust);
    return cells.stream()
        .filter(cell -> cell.contains(girths.under(), girths.bust()))
        .map(SizeCell::id)
        .distinct()
        .toList();
  }

  /**
   * The probability of each size: the true girths are assumed to be normal around the measured
   * ones, with independent errors and a flat prior.
   *
   * @param underbust may be null where the bust alone decides
   */
  public SizeEstimate estimate(Measured bust, Measured underbust) {
    List<SizeChance> chances = new ArrayList<>();
    Girths girths = girths(bust, underbust);
    for (ChartRow row : rows) {
      row.chances(girths, chances);
    }
    double inside = chances.stream().mapToDouble(SizeChance::probability).sum();
    return new SizeEstimate(simple ? chances : joined(chances), Math.max(0, 1 - inside));
  }

  /** One chance for each size, with the cell that holds most of it. */
  private static List<SizeChance> joined(List<SizeChance> chances) {
    Map<String, Map<SizeCell, Double>> bySize = new LinkedHashMap<>();
    for (SizeChance one : chances) {
      bySize
          .computeIfAbsent(one.cell().id(), id -> new LinkedHashMap<>())
          .merge(one.cell(), one.probability(), Double::sum);
    }
    return bySize.values().stream()
        .map(
            cells ->
                new SizeChance(
                    Collections.max(cells.entrySet(), Map.Entry.comparingByValue()).getKey(),
                    cells.values().stream().mapToDouble(p -> p).sum()))
        .toList();
  }

  /**
   * The most probable size, as from {@link #estimate}, but faster: integrates only sizes that may
   * be the most probable.
   */
  public Optional<SizeChance> best(Measured bust, Measured underbust) {
    if (!simple) {
      return estimate(bust, underbust).best();
    }
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
    // Where the bust alone decides, any underbust gives the same.
    Measured under = underbust == null ? bust : underbust;
    return new Girths(bust.value().mm(), bust.sdMm(), under.value().mm(), under.sdMm());
  }

  /**
   * Sister sizes of a size: one band down with one cup up, then one band up with one cup down, if
   * the chart has them; empty for a chart without cups.
   */
  public List<SizeCell> sisters(SizeCell cell) {
    return order.sisters(cell);
  }

  /** Whether one size of this chart is not smaller than another in either band or cup. */
  public boolean isAtLeast(SizeCell one, SizeCell other) {
    return order.isAtLeast(one, other);
  }

  /** How many bands one size lies from another, by the underbusts they begin with. */
  public long bandsApart(SizeCell one, SizeCell other) {
    return order.bandsApart(one, other);
  }

  /** Orders sizes by the underbust they begin with, then by the bust, the smallest first. */
  public Comparator<SizeCell> roomier() {
    return order.roomier();
  }

  private static void refuseCount(List<SizeCell> cells) {
    if (cells.isEmpty() || cells.size() > MOST_CELLS) {
      throw new IllegalArgumentException("a chart has 1 to " + MOST_CELLS + " sizes");
    }
  }

  private static void refuseFaults(List<SizeCell> cells) {
    refuseCount(cells);
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
        if (one.overlaps(other)) {
          throw new IllegalArgumentException(
              "the sizes " + other.id() + " and " + one.id() + " overlap");
        }
      }
    }
  }
}
