package easewright.pattern;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Checks that seam references are mutual. */
final class SeamNames {

  private final PatternSheet sheet;
  private final SheetNode root;
  private final Map<Edge.Ref, Edge> edges = new HashMap<>();

  SeamNames(PatternSheet sheet, SheetNode root) {
    this.sheet = sheet;
    this.root = root;
    for (Piece piece : sheet.pieces()) {
      if (piece.follows().isEmpty()) {
        piece.edges().forEach(edge -> edges.put(new Edge.Ref(piece.id(), edge.id()), edge));
      }
    }
  }

  void run() {
    List<SheetNode> pieces = root.each("pieces");
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = sheet.pieces().get(i);
      if (piece.follows().isPresent()) {
        continue;
      }
      List<SheetNode> nodes = pieces.get(i).each("edges");
      for (int j = 0; j < nodes.size(); j++) {
        Edge edge = piece.edges().get(j);
        if (edge.sewnTo().isEmpty() && edge.finish().isEmpty()) {
          nodes.get(j).fault("edge-sewn-to-nothing", "edge", edge.id());
        }
        List<SheetNode> sewnTo = nodes.get(j).each("sewnTo");
        for (int k = 0; k < sewnTo.size(); k++) {
          sewn(sewnTo.get(k), new Edge.Ref(piece.id(), edge.id()), edge, edge.sewnTo().get(k));
        }
      }
    }
  }

  private void sewn(SheetNode node, Edge.Ref here, Edge edge, Edge.Ref there) {
    Edge partner = edges.get(there);
    if (partner == null) {
      node.fault("unknown-edge", "there", there);
    } else if (!partner.sewnTo().contains(here)) {
      node.fault("not-sewn-back", "there", there, "here", here);
    } else if (!Set.copyOf(partner.crosses()).equals(Set.copyOf(edge.crosses()))) {
      node.fault("girths-unlike", "here", here, "there", there);
    }
  }
}
