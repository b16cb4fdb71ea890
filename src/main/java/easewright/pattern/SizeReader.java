package easewright.pattern;

import easewright.pattern.SizeChecks.Placed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the sizes of a sheet and expands a grid. */
final class SizeReader {
  private static final String UNDERBUST = "underbust";
  private static final String BUST = "bust";
  private static final String DIFFERENCE = "difference";
  private static final String BODIES = "bodies";

  private SizeReader() {}

  static List<PatternSize> read(SheetNode sizes) {
    boolean overlapping = sizes.at("overlapping").json().asBoolean();
    List<SizeChecks.Row> rows =
        sizes.has("grid") ? grid(sizes.at("grid"), overlapping) : named(sizes, overlapping);
    new SizeChecks(sizes, rows, overlapping).run();
    return rows.stream().map(SizeChecks.Row::size).toList();
  }

  private static List<SizeChecks.Row> grid(SheetNode grid, boolean overlapping) {
    List<Placed> bands = placed(grid, "bands", UNDERBUST);
    List<Placed> cups = placed(grid, "cups", DIFFERENCE);
    SizeChecks.chain(bands, UNDERBUST, overlapping);
    SizeChecks.chain(cups, DIFFERENCE, overlapping);
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
    List<SizeChecks.Row> rows = new ArrayList<>();
    for (int i = 0; i < bands.size(); i++) {
      for (int j = 0; j < cups.size(); j++) {
        Map<String, Double> finished = new HashMap<>();
        for (Map.Entry<String, double[]> step : steps.entrySet()) {
          double[] mm = step.getValue();
          finished.put(step.getKey(), mm[0] + i * mm[1] + j * mm[2]);
        }
        Placed band = bands.get(i);
        Placed cup = cups.get(j);
        rows.add(
            new SizeChecks.Row(
                grid,
                new PatternSize(
                    band.name() + cup.name(),
                    AliasReader.of(band.node(), cup.node()),
                    Optional.of(band.name()),
                    Optional.of(cup.name()),
                    List.of(
                        new BodyCell(
                            Optional.of(band.span()), Optional.empty(), Optional.of(cup.span()))),
                    finished)));
      }
    }
    for (String key : steps.keySet()) {
      if (rows.stream().anyMatch(row -> row.size().finishedMm().get(key) <= 0)) {
        grid.at("measurements").at(key).fault("steps-to-nothing", "measurement", key);
      }
    }
    return rows;
  }

  private static List<Placed> placed(SheetNode grid, String list, String spanKey) {
    List<Placed> placed = new ArrayList<>();
    for (SheetNode node : grid.each(list)) {
      span(node, spanKey).ifPresent(span -> placed.add(new Placed(node, node.text("label"), span)));
    }
    SizeChecks.unique(placed);
    return placed;
  }

  private static List<SizeChecks.Row> named(SheetNode sizes, boolean overlapping) {
    List<SizeChecks.Row> rows = new ArrayList<>();
    Set<String> keys = new HashSet<>();
    for (SheetNode node : sizes.each("named")) {
      Map<String, Double> finished = new HashMap<>();
      node.fields("measurements")
          .forEach((key, value) -> finished.put(key, value.quantity(SheetQuantities::mm)));
      keys.addAll(finished.keySet());
      List<BodyCell> bodies = bodies(node);
      if (!bodies.isEmpty()) {
        rows.add(
            new SizeChecks.Row(
                node,
                new PatternSize(
                    node.text("name"),
                    AliasReader.of(node),
                    node.maybeText("band"),
                    node.maybeText("cup"),
                    bodies,
                    finished)));
      }
    }
    SizeChecks.unique(rows.stream().map(r -> new Placed(r.node(), r.size().name(), null)).toList());
    for (SizeChecks.Row row : rows) {
      for (String key : keys) {
        if (!row.size().finishedMm().containsKey(key)) {
          row.node()
              .at("measurements")
              .fault("measurement-of-some-sizes", "size", row.size().name(), "measurement", key);
        }
      }
    }
    return rows;
  }

  private static List<BodyCell> bodies(SheetNode node) {
    boolean alone = node.has(UNDERBUST) || node.has(BUST) || node.has(DIFFERENCE);
    if (alone && node.has(BODIES)) {
      node.at(BODIES).fault("bodies-beside-one");
      return List.of();
    }
    List<SheetNode> nodes = node.has(BODIES) ? node.each(BODIES) : List.of(node);
    List<BodyCell> bodies = new ArrayList<>();
    for (SheetNode body : nodes) {
      int before = node.faults().size();
      Optional<Span> underbust = span(body, UNDERBUST);
      Optional<Span> bust = span(body, BUST);
      Optional<Span> difference = span(body, DIFFERENCE);
      if (node.faults().size() == before) {
        body.made(() -> new BodyCell(underbust, bust, difference), "girths-of-a-size")
            .ifPresent(bodies::add);
      }
    }
    return bodies;
  }

  private static Optional<Span> span(SheetNode owner, String key) {
    if (!owner.has(key)) {
      return Optional.empty();
    }
    SheetNode node = owner.at(key);
    double from = node.mm("from");
    double to = node.mm("to");
    return node.made(() -> new Span(from, to), "span");
  }
}
