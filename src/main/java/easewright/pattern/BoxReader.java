package easewright.pattern;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the bounding boxes of a piece, graded by band and cup like the sizes. */
final class BoxReader {
  private BoxReader() {}

  static Map<String, Piece.Box> boxes(SheetNode piece, List<PatternSize> sizes) {
    Map<String, Piece.Box> boxes = new HashMap<>();
    if (!piece.has("box")) {
      return boxes;
    }
    SheetNode box = piece.at("box");
    List<Optional<String>> bands = sizes.stream().map(PatternSize::band).distinct().toList();
    List<Optional<String>> cups = sizes.stream().map(PatternSize::cup).distinct().toList();
    for (PatternSize size : sizes) {
      int band = bands.indexOf(size.band());
      int cup = cups.indexOf(size.cup());
      boxes.put(
          size.name(),
          new Piece.Box(
              graded(box.at("around"), band, cup), graded(box.at("along"), band, cup)));
    }
    return boxes;
  }

  private static double graded(SheetNode node, int band, int cup) {
    return node.mm("base")
        + band * node.maybe("perBand", SheetQuantities::signedMm).orElse(0.0)
        + cup * node.maybe("perCup", SheetQuantities::signedMm).orElse(0.0);
  }
}
