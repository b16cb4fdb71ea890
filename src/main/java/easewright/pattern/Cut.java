package easewright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The pieces cut for one set of choices, and how a change is distributed over them.
 *
 * @param pieces the pieces, in the sheet's order
 */
public record Cut(List<Piece> pieces) {

  public Cut {
    pieces = List.copyOf(pieces);
  }

  /**
   * A part of a girth change, as marked on one paper piece.
   *
   * @param piece the piece
   * @param lineOrEdge where on it
   * @param eachMm change to mark there, in mm; a fold or a mirrored pair repeats it
   * @param copy whether the piece is a lining or support that repeats its main piece, and so does
   *     not add to the girth
   */
  public record Share(Piece piece, String lineOrEdge, double eachMm, boolean copy) {

    /** What all occurrences of the piece add to the girth, in mm; 0 for a copy. */
    public double girthMm() {
      return copy ? 0 : eachMm * piece.occurrences();
    }
  }

  /** The piece with an id, if it is cut. */
  public Optional<Piece> piece(String id) {
    return pieces.stream().filter(piece -> piece.id().equals(id)).findFirst();
  }

  /** The pieces of every layer that carry a line or an edge, by its trade id. */
  public List<Piece> piecesWith(String lineOrEdge) {
    List<Piece> carrying = new ArrayList<>();
    for (Piece piece : pieces) {
      if (piece.carries(lineOrEdge)) {
        carrying.add(piece);
      }
    }
    return carrying;
  }

  /** The edges an edge is sewn to among the pieces cut. */
  public List<Edge.Ref> partners(Edge edge) {
    return edge.sewnTo().stream().filter(ref -> piece(ref.piece()).isPresent()).toList();
  }

  /** Number of seams of the main layer that cross a girth, given by its trade term, e.g. "bust". */
  public int seamsAcross(String girth) {
    int edges = 0;
    for (Piece piece : pieces) {
      for (Edge edge : piece.edges()) {
        if (makesGirth(piece) && edge.crosses().contains(girth) && !partners(edge).isEmpty()) {
          edges += piece.occurrences();
        }
      }
    }
    return edges / 2;
  }

  /**
   * Distributes a change of girth equally over every main edge or line with one id. A piece on the
   * fold has its edge twice, a mirrored pair has it on both; linings and supports follow their main
   * piece. Upright lines and edges with the same id lie on the same girth; a sheet gives others
   * different ids.
   *
   * @param changeMm the whole change in mm, positive to let out
   * @param lineOrEdge trade id, e.g. "side-seam"
   * @return the shares, whose {@link Share#girthMm()} sum to the change; empty if no piece has it
   */
  public List<Share> share(double changeMm, String lineOrEdge) {
    List<Piece> carrying = piecesWith(lineOrEdge);
    int occurrences = carrying.stream().filter(Cut::makesGirth).mapToInt(Piece::occurrences).sum();
    if (occurrences == 0) {
      return List.of();
    }
    double eachMm = changeMm / occurrences;
    return carrying.stream()
        .filter(piece -> makesGirth(piece) || piece.follows().isPresent())
        .map(piece -> new Share(piece, lineOrEdge, eachMm, !makesGirth(piece)))
        .toList();
  }

  private static boolean makesGirth(Piece piece) {
    return piece.layer() == Layer.MAIN;
  }
}
