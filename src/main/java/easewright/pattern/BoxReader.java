package easewright.pattern;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the paper size of a piece in every size. */
final class BoxReader {

  private static final String AROUND = "around";
  private static final String ALONG = "along";

  private final List<PatternSize> sizes;
  private final boolean grid;
  private final int cups;

  /**
   * @param sizes the sizes of the sheet, those of a grid band by band
   * @param grid whether they were given as a grid
   */
  BoxReader(List<PatternSize> sizes, boolean grid) {
    this.sizes = sizes;
    this.grid = grid;
    this.cups = grid ? (int) sizes.stream().map(PatternSize::cup).distinct().count() : 1;
  }

  /** Boxes by size name: those given, otherwise those of the outlines. */
  Map<String, Piece.Box> read(SheetNode piece, Map<String, List<Piece.Corner>> outlines) {
    Map<String, Piece.Box> boxes = new HashMap<>();
    outlines.forEach(
        (size, corners) ->
            piece
                .at("outlines")
                .at(size)
                .made(() -> Piece.Box.of(corners), "corners-without-area")
                .ifPresent(box -> boxes.put(size, box)));
    SheetNode node = piece.at("box");
    if (node.has(AROUND) || node.has(ALONG)) {
      graded(node, boxes);
    } else {
      piece.fields("box").forEach((size, box) -> read(size, box, boxes));
    }
    return boxes;
  }

  private void graded(SheetNode node, Map<String, Piece.Box> boxes) {
    if (!node.has(AROUND) || !node.has(ALONG) || node.json().size() > 2) {
      node.fault("box-half-graded");
      return;
    }
    double[] around = steps(node.at(AROUND));
    double[] along = steps(node.at(ALONG));
    for (int i = 0; i < sizes.size(); i++) {
      String size = sizes.get(i).name();
      double aroundMm = around[0] + i / cups * around[1] + i % cups * around[2];
      double alongMm = along[0] + i / cups * along[1] + i % cups * along[2];
      Optional<Piece.Box> box =
          node.made(() -> new Piece.Box(aroundMm, alongMm), "steps-too-negative");
      if (box.isEmpty()) {
        return;
      }
      boxes.put(size, box.get());
    }
  }

  /** Base value, increment per further band or named size, and increment per further cup, in mm. */
  private double[] steps(SheetNode side) {
    for (String step : List.of("perBand", "perCup", "perSize")) {
      if (side.has(step) && step.equals("perSize") == grid) {
        side.at(step).fault(grid ? "step-of-no-grid" : "step-of-a-grid", "step", step);
      }
    }
    return new double[] {
      side.mm("base"),
      side.maybe(grid ? "perBand" : "perSize", SheetQuantities::signedMm).orElse(0.0),
      side.maybe("perCup", SheetQuantities::signedMm).orElse(0.0)
    };
  }

  private static void read(String size, SheetNode node, Map<String, Piece.Box> boxes) {
    double aroundMm = node.mm(AROUND);
    double alongMm = node.mm(ALONG);
    node.made(() -> new Piece.Box(aroundMm, alongMm), "box-without-size")
        .ifPresent(box -> boxes.put(size, box));
  }
}
