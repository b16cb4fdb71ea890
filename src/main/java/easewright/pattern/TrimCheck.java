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
        node.at("of").fault("unknown-measurement", "measurement", of);
      }
      if (of.isEmpty() && node.has("fraction")) {
        node.at("fraction").fault("no-measurement-to-be-part-of");
      }
      if (CUT.contains(trim.kind()) && of.isEmpty() && trim.plusMm() == 0) {
        node.fault("trim-without-length", "trim", trim.id());
      }
      for (int k = 0; k < trim.places().size(); k++) {
        Edge.Ref ref = trim.places().get(k);
        if (sheet.pieces().stream()
            .noneMatch(p -> p.id().equals(ref.piece()) && p.carries(ref.edge()))) {
          node.each("sewnTo").get(k).fault("unknown-edge-or-line", "ref", ref);
        }
      }
      PieceCheck.leftOut(node);
    }
  }
}
