package easewright.pattern;

import java.util.DoubleSummaryStatistics;
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
 * @param grain where the length of the cloth runs
 * @param seamAllowanceMm allowance at its sewn edges, in mm
 * @param lines ids of lines drawn on it, e.g. "bust-line"
 * @param lengthenAt which of its lines it is lengthened or shortened at
 * @param edges its edges; those of the piece it follows, if it follows one
 * @param smallerMm how much smaller than the piece it follows it is cut, in mm, by edge
 * @param leftOut what changes when it is left out; empty if it is needed
 * @param boxes how large its paper is, by size name
 * @param outlinesMm drawn outline by size name, corner after corner, seam allowances included,
 *     where the sheet gives one
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
    Grain grain,
    double seamAllowanceMm,
    List<String> lines,
    List<String> lengthenAt,
    List<Edge> edges,
    Map<String, Double> smallerMm,
    Optional<String> leftOut,
    Map<String, Box> boxes,
    Map<String, List<Corner>> outlinesMm) {

  /**
   * A corner of an outline, from the lower left, in mm.
   *
   * @param xMm to the right
   * @param yMm upwards
   */
  public record Corner(double xMm, double yMm) {}

  /**
   * The rectangle that just holds the paper piece as drawn, seam allowances included. Of a piece
   * cut on the fold it is the half that is drawn, the fold along its left side.
   *
   * @param aroundMm its extent around the body, in mm
   * @param alongMm its extent up and down the body, in mm
   */
  public record Box(double aroundMm, double alongMm) {

    /**
     * @throws IllegalArgumentException if a side is not above zero
     */
    public Box {
      if (!(aroundMm > 0) || !(alongMm > 0)) {
        throw new SheetRefusal("box-of-zero");
      }
    }

    static Box of(List<Corner> outline) {
      DoubleSummaryStatistics x = outline.stream().mapToDouble(Corner::xMm).summaryStatistics();
      DoubleSummaryStatistics y = outline.stream().mapToDouble(Corner::yMm).summaryStatistics();
      return new Box(x.getMax() - x.getMin(), y.getMax() - y.getMin());
    }
  }

  /**
   * @throws IllegalArgumentException if the piece cannot be cut as stated
   */
  public Piece {
    if (count < 1) {
      throw new SheetRefusal("piece-never-cut");
    }
    if (onFold && mirrored) {
      throw new SheetRefusal("piece-folded-and-mirrored");
    }
    if (mirrored && count % 2 != 0) {
      throw new SheetRefusal("mirrored-without-pair");
    }
    lines = List.copyOf(lines);
    lengthenAt = List.copyOf(lengthenAt);
    edges = List.copyOf(edges);
    smallerMm = Map.copyOf(smallerMm);
    boxes = Map.copyOf(boxes);
    outlinesMm = Map.copyOf(outlinesMm);
  }

  /** How often a drawn edge occurs on the garment: a fold makes two of every one. */
  public int occurrences() {
    return onFold ? 2 * count : count;
  }

  /** How large its paper is in a size. */
  public Optional<Box> box(String sizeName) {
    return Optional.ofNullable(boxes.get(sizeName));
  }

  /** The edge with an id. */
  public Optional<Edge> edge(String edgeId) {
    return edges.stream().filter(edge -> edge.id().equals(edgeId)).findFirst();
  }

  /** Whether a line or an edge of it has an id. */
  public boolean carries(String lineOrEdge) {
    if (lines.contains(lineOrEdge)) {
      return true;
    }
    for (Edge edge : edges) {
      if (edge.id().equals(lineOrEdge)) {
        return true;
      }
    }
    return false;
  }
}
