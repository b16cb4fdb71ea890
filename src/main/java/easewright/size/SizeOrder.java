package easewright.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Which sizes of a chart are larger, and which are sisters. */
final class SizeOrder {
  private final List<SizeCell> cells;
  private final Map<String, SizeCell> byBandAndCup = new HashMap<>();
  private final List<String> bands;
  private final List<String> cups;

  SizeOrder(List<SizeCell> cells) {
    this.cells = cells;
    this.bands =
        cells.stream()
            .sorted((a, b) -> Double.compare(a.underbust().loMm(), b.underbust().loMm()))
            .map(SizeCell::band)
            .distinct()
            .toList();
    this.cups = cells.stream().map(SizeCell::cup).filter(c -> c != null).distinct().toList();
    cells.forEach(cell -> byBandAndCup.put(key(cell.band(), cell.cup()), cell));
  }

  boolean hasCups() {
    return !cups.isEmpty();
  }

  /** One band down with one cup up, then one band up with one cup down, as far as there are. */
  List<SizeCell> sisters(SizeCell cell) {
    int band = bands.indexOf(cell.band());
    int cup = cups.indexOf(cell.cup());
    List<SizeCell> sisters = new ArrayList<>();
    if (band >= 0 && cup >= 0) {
      at(band - 1, cup + 1).ifPresent(sisters::add);
      at(band + 1, cup - 1).ifPresent(sisters::add);
    }
    return sisters;
  }

  boolean isAtLeast(SizeCell one, SizeCell other) {
    return isAtLeast(one, other, cell -> cell.underbust().loMm())
        && (hasCups()
            ? cups.indexOf(one.cup()) >= cups.indexOf(other.cup())
            : isAtLeast(one, other, cell -> cell.across().loMm()));
  }

  /** Whether a size does not begin below another; a size may have several cells. */
  private boolean isAtLeast(SizeCell one, SizeCell other, ToDoubleFunction<SizeCell> start) {
    return least(one, start) >= least(other, start);
  }

  long bandsApart(SizeCell one, SizeCell other) {
    double from = Math.min(one.underbust().loMm(), other.underbust().loMm());
    double to = Math.max(one.underbust().loMm(), other.underbust().loMm());
    return cells.stream()
        .map(cell -> cell.underbust().loMm())
        .filter(start -> start > from && start <= to)
        .distinct()
        .count();
  }

  /** By the underbust that a size begins with, then by its bust. */
  Comparator<SizeCell> roomier() {
    return Comparator.comparingDouble((SizeCell one) -> least(one, cell -> cell.underbust().loMm()))
        .thenComparingDouble(one -> least(one, cell -> cell.bustGirths().loMm()));
  }

  private double least(SizeCell size, ToDoubleFunction<SizeCell> start) {
    return cells.stream()
        .filter(cell -> cell.id().equals(size.id()))
        .mapToDouble(start)
        .min()
        .orElseGet(() -> start.applyAsDouble(size));
  }

  private Optional<SizeCell> at(int band, int cup) {
    return band < 0 || cup < 0 || band >= bands.size() || cup >= cups.size()
        ? Optional.empty()
        : Optional.ofNullable(byBandAndCup.get(key(bands.get(band), cups.get(cup))));
  }

  private static String key(String band, String cup) {
    return band + "\n" + cup;
  }
}
