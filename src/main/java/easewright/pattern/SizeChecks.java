package easewright.pattern;

import easewright.measure.Rounded;
import easewright.size.SizeChart;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Checks the sizes of a sheet for gaps, overlaps, holes and names shared by two sizes. */
final class SizeChecks {
  /** A part of a grid, or a size, with its range. */
  record Placed(SheetNode node, String name, Span span) {}

  /** A size and where it stands. */
  record Row(SheetNode node, PatternSize size) {}

  private final SheetNode sizes;
  private final List<Row> rows;
  private final boolean overlapping;

  /**
   * @param overlapping whether the sheet says that its sizes share bodies
   */
  SizeChecks(SheetNode sizes, List<Row> rows, boolean overlapping) {
    this.sizes = sizes;
    this.rows = rows;
    this.overlapping = overlapping;
  }

  /** Reports every fault of the sizes together. */
  void run() {
    int before = sizes.faults().size();
    aliases();
    if (rows.isEmpty() || !isOneKind()) {
      return;
    }
    if (sizes.has("named")) {
      overlaps();
      gaps();
    }
    int bodies = rows.stream().mapToInt(row -> row.size().bodies().size()).sum();
    if (bodies > SizeChart.MOST_CELLS) {
      sizes.fault("too-many-bodies", "count", bodies, "most", SizeChart.MOST_CELLS);
    } else if (sizes.faults().size() == before && overlapping && isCrowded()) {
      sizes.at("overlapping").fault("sizes-crowded");
    }
  }

  /** Whether all sizes are distinguished by the same girths; reports the first that is not. */
  private boolean isOneKind() {
    return isOneKind(body -> body.differenceMm().isPresent(), "sizes-by-two-ways")
        && isOneKind(body -> body.underbustMm().isPresent(), "underbust-of-some-sizes");
  }

  private boolean isOneKind(Predicate<BodyCell> kind, String fault) {
    boolean first = kind.test(rows.get(0).size().bodies().get(0));
    Optional<Row> other =
        rows.stream()
            .filter(row -> row.size().bodies().stream().anyMatch(body -> kind.test(body) != first))
            .findFirst();
    other.ifPresent(
        row ->
            row.node().fault(fault, "size", row.size().name(), "first", rows.get(0).size().name()));
    return other.isEmpty();
  }

  private boolean isCrowded() {
    try {
      SizeChart.sharing(rows.stream().flatMap(row -> row.size().cells().stream()).toList());
      return false;
    } catch (IllegalArgumentException crowded) {
      return true;
    }
  }

  private void aliases() {
    Map<String, String> owners = new HashMap<>();
    rows.forEach(row -> owners.put(SizeNames.plain(row.size().name()), row.size().name()));
    Map<String, String> labels = new HashMap<>();
    for (Row row : rows) {
      for (SizeAlias alias : row.size().aliases()) {
        String name = row.size().name();
        String plain = SizeNames.plain(alias.label());
        String owner = owners.getOrDefault(plain, name);
        String before = overlapping ? null : labels.putIfAbsent(alias.region() + " " + plain, name);
        String other = owner.equals(name) ? before : owner;
        if (other != null && !other.equals(name)) {
          row.node()
              .fault("alias-of-two-sizes", "label", alias.label(), "before", other, "here", name);
        }
      }
    }
  }

  static void unique(List<Placed> placed) {
    Set<String> names = new HashSet<>();
    for (Placed one : placed) {
      if (!names.add(one.name())) {
        one.node().fault("name-twice", "name", one.name());
      }
    }
  }

  static void chain(List<Placed> placed, String what, boolean overlapping) {
    gaps(placed, what);
    for (int i = 1; i < placed.size(); i++) {
      Placed before = placed.get(i - 1);
      Placed here = placed.get(i);
      if (before.span().isWithin(here.span()) || here.span().isWithin(before.span())) {
        here.node().fault("size-within-another", "one", here.name(), "other", before.name());
      } else if (!overlapping && here.span().fromMm() < before.span().toMm() - Span.BORDER_MM) {
        here.node().fault("sizes-overlap", "before", before.name(), "here", here.name());
      }
    }
  }

  private void overlaps() {
    for (int i = 0; i < rows.size(); i++) {
      countedTwice(rows.get(i));
      for (int j = 0; j < i; j++) {
        overlap(rows.get(j).size(), rows.get(i));
      }
    }
  }

  private void countedTwice(Row row) {
    List<BodyCell> bodies = row.size().bodies();
    for (int i = 0; i < bodies.size(); i++) {
      if (bodies.subList(0, i).stream().anyMatch(bodies.get(i)::meets)) {
        row.node().at("bodies").at(String.valueOf(i)).fault("bodies-twice");
      }
    }
  }

  private void overlap(PatternSize before, Row here) {
    PatternSize size = here.size();
    if (within(size, before) || within(before, size)) {
      here.node().fault("size-within-another", "one", size.name(), "other", before.name());
    } else if (!overlapping
        && size.bodies().stream().anyMatch(one -> before.bodies().stream().anyMatch(one::meets))) {
      here.node().fault("sizes-overlap", "before", before.name(), "here", size.name());
    }
  }

  private static boolean within(PatternSize one, PatternSize other) {
    return one.bodies().stream().allMatch(b -> other.bodies().stream().anyMatch(b::isWithin));
  }

  private void gaps() {
    boolean byBust = rows.get(0).size().underbustMm().isEmpty();
    List<Placed> spans = new ArrayList<>();
    for (Row row : rows) {
      for (BodyCell body : row.size().bodies()) {
        Span span = byBust ? body.bustMm().orElseThrow() : body.underbustMm().orElseThrow();
        spans.add(new Placed(row.node(), row.size().name(), span));
      }
    }
    gaps(spans, byBust ? "bust" : "underbust");
  }

  private static void gaps(List<Placed> placed, String what) {
    List<Placed> sorted = new ArrayList<>(placed);
    sorted.sort(Comparator.comparingDouble(one -> one.span().fromMm()));
    double reached = sorted.isEmpty() ? 0 : sorted.get(0).span().fromMm();
    for (Placed one : sorted) {
      if (one.span().fromMm() > reached + Span.BORDER_MM) {
        one.node()
            .fault(
                "sizes-apart",
                "what",
                what,
                "from",
                Rounded.text(reached, 0),
                "to",
                Rounded.text(one.span().fromMm(), 0));
      }
      reached = Math.max(reached, one.span().toMm());
    }
  }
}
