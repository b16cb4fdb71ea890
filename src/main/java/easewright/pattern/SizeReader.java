package easewright.pattern;

import easewright.measure.Rounded;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the sizes of a sheet, expands a grid, and checks for gaps, overlaps and holes. */
final class SizeReader {

  // Borders are converted from inches and centimetres: half a millimetre is not a gap.
  private static final double BORDER_MM = 0.5;

  private record Placed(SheetNode node, String name, Span span) {}

  private record Row(SheetNode node, PatternSize size) {}

  private SizeReader() {}

  static List<PatternSize> read(SheetNode sizes) {
    return sizes.has("grid") ? grid(sizes.at("grid")) : named(sizes);
  }

  private static List<PatternSize> grid(SheetNode grid) {
    List<Placed> bands = placed(grid, "bands", "underbust");
    List<Placed> cups = placed(grid, "cups", "difference");
    chain(bands, "underbust");
    chain(cups, "difference");
    Map<String, double[]> steps = new HashMap<>();
    grid.fields("measurements")
        .forEach(
            (key, node) ->
                steps.put(
                    key,
                    new double[] {
                      node.mm("base"),
                      node.maybe("perBand", SheetQuantities::signedMm).orElse(0.0),
                      node.maybe("perCup", SheetQuantities::signedMm).orElse(0.0)
                    }));
    List<PatternSize> sizes = new ArrayList<>();
    for (int i = 0; i < bands.size(); i++) {
      for (int j = 0; j < cups.size(); j++) {
        Map<String, Double> finished = new HashMap<>();
        for (Map.Entry<String, double[]> step : steps.entrySet()) {
          double[] mm = step.getValue();
          finished.put(step.getKey(), mm[0] + i * mm[1] + j * mm[2]);
        }
        String band = bands.get(i).name();
        String cup = cups.get(j).name();
        sizes.add(
            new PatternSize(
                band + cup,
                Optional.of(band),
                Optional.of(cup),
                bands.get(i).span(),
                Optional.empty(),
                Optional.of(cups.get(j).span()),
                finished));
      }
    }
    for (String key : steps.keySet()) {
      if (sizes.stream().anyMatch(size -> size.finishedMm().get(key) <= 0)) {
        grid.at("measurements").at(key).fault("steps-to-nothing", "measurement", key);
      }
    }
    return sizes;
  }

  private static List<Placed> placed(SheetNode grid, String list, String spanKey) {
    List<Placed> placed = new ArrayList<>();
    for (SheetNode node : grid.each(list)) {
      span(node.at(spanKey))
          .ifPresent(span -> placed.add(new Placed(node, node.text("label"), span)));
    }
    unique(placed);
    return placed;
  }

  private static List<PatternSize> named(SheetNode sizes) {
    List<Row> rows = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    for (SheetNode node : sizes.each("named")) {
      Map<String, Double> finished = new HashMap<>();
      node.fields("measurements")
          .forEach((key, value) -> finished.put(key, value.quantity(SheetQuantities::mm)));
      keys.addAll(finished.keySet());
      Optional<Span> underbust = span(node.at("underbust"));
      Optional<Span> bust = node.has("bust") ? span(node.at("bust")) : Optional.empty();
      Optional<Span> difference =
          node.has("difference") ? span(node.at("difference")) : Optional.empty();
      if (underbust.isPresent() && (bust.isPresent() || difference.isPresent())) {
        rows.add(
            new Row(
                node,
                new PatternSize(
                    node.text("name"),
                    node.maybeText("band"),
                    node.maybeText("cup"),
                    underbust.get(),
                    bust,
                    difference,
                    finished)));
      }
    }
    unique(rows.stream().map(r -> new Placed(r.node, r.size.name(), null)).toList());
    for (Row row : rows) {
      for (String key : keys) {
        if (!row.size.finishedMm().containsKey(key)) {
          row.node
              .at("measurements")
              .fault("measurement-of-some-sizes", "size", row.size.name(), "measurement", key);
        }
      }
    }
    overlaps(rows);
    List<Placed> underbusts = new ArrayList<>();
    rows.forEach(r -> underbusts.add(new Placed(r.node, r.size.name(), r.size.underbustMm())));
    gaps(underbusts, "underbust");
    return rows.stream().map(Row::size).toList();
  }

  private static Optional<Span> span(SheetNode node) {
    double from = node.mm("from");
    double to = node.mm("to");
    return node.made(() -> new Span(from, to), "span");
  }

  private static void unique(List<Placed> placed) {
    Set<String> names = new HashSet<>();
    for (Placed one : placed) {
      if (!names.add(one.name())) {
        one.node().fault("name-twice", "name", one.name());
      }
    }
  }

  private static void chain(List<Placed> placed, String what) {
    gaps(placed, what);
    for (int i = 1; i < placed.size(); i++) {
      Placed before = placed.get(i - 1);
      Placed here = placed.get(i);
      if (here.span().fromMm() < before.span().toMm() - BORDER_MM) {
        overlap(here.node(), before.name(), here.name());
      }
    }
  }

  private static void overlaps(List<Row> rows) {
    for (int i = 0; i < rows.size(); i++) {
      for (int j = 0; j < i; j++) {
        PatternSize a = rows.get(j).size;
        PatternSize b = rows.get(i).size;
        // A size by bust girth and one by difference have no common axis for comparison.
        boolean sameCup = meet(a.bustMm(), b.bustMm()) || meet(a.differenceMm(), b.differenceMm());
        if (sameCup && meet(Optional.of(a.underbustMm()), Optional.of(b.underbustMm()))) {
          overlap(rows.get(i).node, a.name(), b.name());
        }
      }
    }
  }

  private static boolean meet(Optional<Span> a, Optional<Span> b) {
    return a.isPresent()
        && b.isPresent()
        && Math.min(a.get().toMm(), b.get().toMm()) - Math.max(a.get().fromMm(), b.get().fromMm())
            > BORDER_MM;
  }

  private static void overlap(SheetNode node, String before, String here) {
    node.fault("sizes-overlap", "before", before, "here", here);
  }

  private static void gaps(List<Placed> placed, String what) {
    List<Placed> sorted = new ArrayList<>(placed);
    sorted.sort(Comparator.comparingDouble(one -> one.span().fromMm()));
    double reached = sorted.isEmpty() ? 0 : sorted.get(0).span().fromMm();
    for (Placed one : sorted) {
      if (one.span().fromMm() > reached + BORDER_MM) {
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
