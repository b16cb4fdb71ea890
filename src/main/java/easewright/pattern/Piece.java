package easewright.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One paper piece.
 *
 * @param id kebab-case id
 * @param name what is printed on it
 * @param role trade term for what it is, e.g. "side-panel"
 * @param count how many are cut
 * @param onFold whether half of it is drawn and the cloth folded
 * @param mirrored whether they are cut as left and right
 * @param layer the cloth it is cut from
 * @param follows the main piece whose lines, edges and changes it shares, for a lining or support
 *     cut like it
 * @param when the choices under which it is needed
 * @param stretch where the greatest stretch runs
 * @param seamAllowanceMm allowance at its sewn edges, in mm
 * @param lines ids of lines drawn on it, e.g. "lengthen-shorten"
 * @param edges its edges; those of the piece it follows, if it follows one
 * @param outlinesMm drawn outline by size name, corner after corner, where the sheet gives one
 * @param boxesMm bounding box of the paper piece by size name, where the sheet gives one
 */
public record Piece(
    String id,
    String name,
    String role,
    int count,
    boolean onFold,
    boolean mirrored,
    Layer layer,
    Optional<String> follows,
    When when,
    StretchDirection stretch,
    double seamAllowanceMm,
    List<String> lines,
    List<Edge> edges,
    Map<String, List<Corner>> outlinesMm,
    Map<String, Box> boxesMm) {

  /**
   * A corner of an outline, from the lower left, in mm.
   *
   * @param xMm to the right
   * @param yMm upwards
   */
  public record Corner(double xMm, double yMm) {}

  /**
   * The bounding box of a paper piece as drawn, seam allowances included; of a piece cut on the
   * fold, of the half that is drawn, its fold line on the left.
   *
   * @param aroundMm how far it reaches around the body
   * @param alongMm how far it reaches up and down the body
   */
  public record Box(double aroundMm, double alongMm) {}

  /**
   * @throws IllegalArgumentException if the piece cannot be cut as stated
   */
  public Piece {
    if (count < 1) {
      throw new IllegalArgumentException("A piece is cut at least once.");
    }
    if (onFold && mirrored) {
      throw new IllegalArgumentException("A piece is cut either on the fold or mirrored.");
    }
    if (mirrored && count % 2 != 0) {
      throw new IllegalArgumentException("Mirrored pieces are cut in pairs.");
    }
    lines = List.copyOf(lines);
    edges = List.copyOf(edges);
    outlinesMm = Map.copyOf(outlinesMm);
    boxesMm = Map.copyOf(boxesMm);
  }

  /** The bounding box in a size, if the sheet gives it. */
  public Optional<Box> box(String sizeName) {
    return Optional.ofNullable(boxesMm.get(sizeName));
  }

  /** How often a drawn edge occurs on the garment: a fold makes two of every one. */
  public int occurrences() {
    return onFold ? 2 * count : count;
  }

  /** The edge with an id. */
  public Optional<Edge> edge(String edgeId) {
    return edges.stream().filter(edge -> edge.id().equals(edgeId)).findFirst();
  }

  /** Whether a line or an edge of it has an id. */
  public boolean carries(String lineOrEdge) {
    return lines.contains(lineOrEdge) || edge(lineOrEdge).isPresent();
  }
}
