package easewright.pattern;

import java.util.List;
import java.util.Set;

/** Checks that every trim can be cut or counted, and is sewn to something that exists. */
final class TrimCheck {

  /** Kinds that are cut to length; the rest are counted. */
  private static final Set<String> CUT = Set.of("elastic", "strap", "tape");

  private final PatternSheet sheet;
  private final SheetNode root;

  TrimCheck(PatternSheet sheet, SheetNode root) {
    this.sheet = sheet;
    this.root = root;
  }

  void run() {
    List<SheetNode> nodes = root.each("trims");
    for (int i = 0; i < nodes.size(); i++) {
      SheetNode node = nodes.get(i);
      Trim trim = sheet.trims().get(i);
      String of = trim.of().orElse("");
      if (!of.isEmpty() && !sheet.sizes().get(0).finishedMm().containsKey(of)) {
        node.at("of")
            .fault(
                "No size gives the finished measurement '" + of + "'.",
                "Name a key that stands under 'measurements' of the sizes.");
      }
      if (of.isEmpty() && node.has("fraction")) {
        node.at("fraction")
            .fault(
                "There is no measurement this would be a part of.",
                "Name it under 'of', or leave 'fraction' out.");
      }
      if (CUT.contains(trim.kind()) && of.isEmpty() && trim.plusMm() == 0) {
        node.fault(
            "Nothing says how long '" + trim.id() + "' is cut.",
            "Name the finished measurement under 'of', or give the length under 'plus'.");
      }
      for (int k = 0; k < trim.places().size(); k++) {
        Edge.Ref ref = trim.places().get(k);
        if (sheet.pieces().stream()
            .noneMatch(p -> p.id().equals(ref.piece()) && p.carries(ref.edge()))) {
          node.each("sewnTo")
              .get(k)
              .fault(
                  "There is no edge or line '" + ref + "' to sew it to.",
                  "Name a piece and an edge or line it has.");
        }
      }
      PieceCheck.leftOut(node);
    }
  }
}
