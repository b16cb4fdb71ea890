package easewright.plan;

import easewright.pattern.Cut;
import easewright.pattern.Edge;
import easewright.pattern.Piece;
import easewright.pattern.Trim;
import easewright.plan.Seam.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A trim and when it is sewn.
 *
 * @param edges the edges it is sewn to, of pieces that are cut
 * @param lines lines it is drawn in along, such as a casing
 */
record SewnTrim(Trim trim, Turn turn, List<Side> edges, List<Line> lines) {
  private static final String STRAP = "strap";
  private static final String FASTENER = "fastener";

  /** Where in the work it has its turn. */
  enum Turn {
    STRAP,
    SEAM,
    EDGE,
    CASING,
    FASTENER,
    ANYWHERE
  }

  /** A line drawn on a piece. */
  record Line(Piece piece, String id) {}

  static SewnTrim of(Cut cut, Trim trim) {
    List<Side> edges = new ArrayList<>();
    List<Line> lines = new ArrayList<>();
    for (Edge.Ref place : trim.places()) {
      Optional<Piece> piece = cut.piece(place.piece());
      Optional<Edge> edge = piece.flatMap(one -> one.edge(place.edge()));
      if (edge.isPresent()) {
        edges.add(new Side(piece.get(), edge.get()));
      } else if (piece.isPresent()) {
        lines.add(new Line(piece.get(), place.edge()));
      }
    }
    if (trim.places().isEmpty() && trim.of().isPresent()) {
      // Where the sheet doesn't say the place, it is edges of the length the trim is cut from.
      Side.open(cut)
          .filter(side -> side.edge().length().equals(trim.of()))
          .filter(side -> isFinishedWith(side, trim))
          .forEach(edges::add);
    }
    return new SewnTrim(trim, turn(cut, trim, edges, lines), edges, lines);
  }

  private static Turn turn(Cut cut, Trim trim, List<Side> edges, List<Line> lines) {
    if (edges.isEmpty() && lines.isEmpty()) {
      return Turn.ANYWHERE;
    }
    if (trim.kind().equals(FASTENER)) {
      return Turn.FASTENER;
    }
    if (edges.isEmpty()) {
      return Turn.CASING;
    }
    if (edges.stream().anyMatch(side -> !cut.partners(side.edge()).isEmpty())) {
      return Turn.SEAM;
    }
    return trim.kind().equals(STRAP) ? Turn.STRAP : Turn.EDGE;
  }

  private static boolean isFinishedWith(Side side, Trim trim) {
    return side.edge().finish().filter(finish -> finish.contains(trim.kind())).isPresent();
  }

  /** Whether it is sewn to one of these pieces; true where its place is not known. */
  boolean isOn(Set<Piece> pieces) {
    return turn == Turn.ANYWHERE
        || edges.stream().anyMatch(side -> pieces.contains(side.piece()))
        || lines.stream().anyMatch(line -> pieces.contains(line.piece()));
  }

  boolean isCaughtIn(Seam seam) {
    return turn == Turn.SEAM && edges.stream().anyMatch(seam.sides()::contains);
  }

  /** Whether it is the finish of an open edge: sewn to it, or drawn in beside it. */
  boolean covers(Side side) {
    return edges.contains(side)
        || isFinishedWith(side, trim)
            && lines.stream().anyMatch(line -> line.piece().equals(side.piece()));
  }
}
