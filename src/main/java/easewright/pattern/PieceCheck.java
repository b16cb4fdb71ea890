package easewright.pattern;

import easewright.measure.Rounded;
import java.util.List;
import java.util.Map;

/** Checks the paper of every piece: its size, its lines, and whether it can be left out. */
final class PieceCheck {

  // A tape's resolution; outlines and boxes are both measured on paper.
  private static final double BOX_MM = 2;

  private final PatternSheet sheet;
  private final SheetNode root;

  PieceCheck(PatternSheet sheet, SheetNode root) {
    this.sheet = sheet;
    this.root = root;
  }

  void run() {
    List<SheetNode> nodes = root.each("pieces");
    for (int i = 0; i < nodes.size(); i++) {
      Piece piece = sheet.pieces().get(i);
      SheetNode node = nodes.get(i);
      sizes(node);
      boxes(node, piece);
      lines(node, piece);
      smaller(node, piece);
      leftOut(node);
    }
    construction();
  }

  /** Checks that an optional item states what changes when it is left out. */
  static void leftOut(SheetNode node) {
    if (node.json().path("optional").asBoolean() != node.has("leftOut")) {
      node.fault(node.has("leftOut") ? "left-out-but-needed" : "left-out-unsaid");
    }
  }

  private void sizes(SheetNode node) {
    for (String key : List.of("outlines", "box")) {
      boolean graded =
          key.equals("box") && (node.at(key).has("around") || node.at(key).has("along"));
      for (Map.Entry<String, SheetNode> entry : node.fields(key).entrySet()) {
        if (!graded && sheet.size(entry.getKey()).isEmpty()) {
          entry.getValue().fault("unknown-size", "size", entry.getKey());
        }
      }
    }
  }

  private void boxes(SheetNode node, Piece piece) {
    boolean written = node.has("box") || node.has("outlines");
    List<String> missing =
        sheet.sizes().stream()
            .map(PatternSize::name)
            .filter(size -> piece.box(size).isEmpty())
            .toList();
    if (missing.size() == sheet.sizes().size() && !written) {
      if (piece.follows().isEmpty()) {
        node.fault("paper-unknown", "piece", piece.id());
      }
    } else if (!missing.isEmpty() && written) {
      node.at(node.has("box") ? "box" : "outlines")
          .fault("paper-of-some-sizes", "piece", piece.id(), "sizes", listed(missing));
    }
    if (written) {
      sheet.sizes().stream().map(PatternSize::name).anyMatch(size -> unlikely(node, piece, size));
    }
  }

  /** Reports the first size in which the paper cannot be as large as stated. */
  private boolean unlikely(SheetNode node, Piece piece, String size) {
    Piece.Box box = piece.box(size).orElse(null);
    if (box == null) {
      return false;
    }
    List<Piece.Corner> outline = piece.outlinesMm().get(size);
    if (outline != null) {
      Piece.Box drawn = Piece.Box.of(outline);
      if (Math.abs(drawn.aroundMm() - box.aroundMm()) > BOX_MM
          || Math.abs(drawn.alongMm() - box.alongMm()) > BOX_MM) {
        node.at("box").fault("box-unlike-outline", "size", size);
        return true;
      }
    }
    double room = 2 * (box.aroundMm() + box.alongMm());
    Map<String, Double> finished = sheet.size(size).orElseThrow().finishedMm();
    for (Edge edge : piece.edges()) {
      double mm = edge.length().map(finished::get).orElse(0.0) * edge.part();
      if (mm > room) {
        node.at(node.has("box") ? "box" : "outlines")
            .fault(
                "edge-longer-than-paper",
                "edge",
                edge.id(),
                "mm",
                Rounded.text(mm, 0),
                "size",
                size);
        return true;
      }
    }
    return false;
  }

  private void lines(SheetNode node, Piece piece) {
    for (SheetNode line : node.each("lengthenAt")) {
      if (!piece.lines().contains(line.json().asText())) {
        line.fault("no-line-to-lengthen", "line", line.json().asText());
      }
    }
  }

  private void smaller(SheetNode node, Piece piece) {
    node.fields("smaller")
        .forEach(
            (edge, at) -> {
              if (piece.follows().isEmpty() || piece.edge(edge).isEmpty()) {
                at.fault("no-edge-to-be-smaller", "edge", edge);
              }
            });
  }

  private void construction() {
    boolean shaped =
        sheet.pieces().stream()
            .anyMatch(p -> p.layer() == Layer.MAIN && p.edge("shaped-seam").isPresent());
    if (shaped != (sheet.constructionType() == ConstructionType.SHAPED_FRONT)) {
      root.at("constructionType")
          .fault(shaped ? "shaped-front-unsaid" : "shaped-front-without-seam");
    }
  }

  private static String listed(List<String> sizes) {
    int most = 6;
    String names = String.join(", ", sizes.subList(0, Math.min(most, sizes.size())));
    return sizes.size() > most ? names + " and " + (sizes.size() - most) + " more" : names;
  }
}
