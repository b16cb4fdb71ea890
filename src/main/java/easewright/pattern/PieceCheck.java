package easewright.pattern;

import java.util.List;
import java.util.Locale;
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
      node.fault(
          node.has("leftOut")
              ? "It says what changes when it is left out, but not that it may be."
              : "It may be left out, but what changes then is not said.",
          "Give 'optional: true' and 'leftOut' together, or neither.");
    }
  }

  private void sizes(SheetNode node) {
    for (String key : List.of("outlines", "box")) {
      boolean graded =
          key.equals("box") && (node.at(key).has("around") || node.at(key).has("along"));
      for (Map.Entry<String, SheetNode> entry : node.fields(key).entrySet()) {
        if (!graded && sheet.size(entry.getKey()).isEmpty()) {
          entry
              .getValue()
              .fault("There is no size '" + entry.getKey() + "'.", "Name a size of the sheet.");
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
        node.fault(
            "Nothing says how large the paper of '" + piece.id() + "' is.",
            "Give it a 'box' with 'around' and 'along', measured on the paper.");
      }
    } else if (!missing.isEmpty() && written) {
      node.at(node.has("box") ? "box" : "outlines")
          .fault(
              "The piece '" + piece.id() + "' is missing for " + listed(missing) + ".",
              "Give every size of the sheet its box or its outline.");
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
        node.at("box")
            .fault(
                "The box of size '" + size + "' is not as large as its outline.",
                "Leave the box out where there are outlines, or measure both again.");
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
                String.format(
                    Locale.ROOT,
                    "The edge '%s' is %.0f mm in size '%s', more than all round its box.",
                    edge.id(),
                    mm,
                    size),
                "Measure the box again, and look at its unit.");
        return true;
      }
    }
    return false;
  }

  private void lines(SheetNode node, Piece piece) {
    for (SheetNode line : node.each("lengthenAt")) {
      if (!piece.lines().contains(line.json().asText())) {
        line.fault(
            "The piece has no line '" + line.json().asText() + "' to be lengthened at.",
            "Name one of its 'lines'.");
      }
    }
  }

  private void smaller(SheetNode node, Piece piece) {
    node.fields("smaller")
        .forEach(
            (edge, at) -> {
              if (piece.follows().isEmpty() || piece.edge(edge).isEmpty()) {
                at.fault(
                    "There is no edge '" + edge + "' that it could be smaller at.",
                    "Name an edge of the piece it follows, or leave 'smaller' out.");
              }
            });
  }

  private void construction() {
    boolean shaped =
        sheet.pieces().stream()
            .anyMatch(p -> p.layer() == Layer.MAIN && p.edge("shaped-seam").isPresent());
    if (shaped != (sheet.constructionType() == ConstructionType.SHAPED_FRONT)) {
      root.at("constructionType")
          .fault(
              shaped
                  ? "A main piece has a 'shaped-seam', so the front is shaped."
                  : "No main piece has an edge 'shaped-seam' that would shape the front.",
              "Write \"shaped-front\" where a seam over the bust is called 'shaped-seam', else"
                  + " \"compression\".");
    }
  }

  private static String listed(List<String> sizes) {
    int most = 6;
    String names = String.join(", ", sizes.subList(0, Math.min(most, sizes.size())));
    return sizes.size() > most ? names + " and " + (sizes.size() - most) + " more" : names;
  }
}
