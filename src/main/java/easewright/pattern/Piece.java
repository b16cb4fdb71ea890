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
 * @param onFold whether half of it is drawn and cut on folded cloth
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
 * @param smallerMm how much smaller it is cut than the piece it follows, in mm, by edge
 * @param leftOut what changes when it is left out; empty if it is needed
 * @param boxes its paper size, by size name
 * @param outlinesMm drawn outline by size name, as a list of corners, including seam allowances, if
 *     the sheet gives one
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
   * The bounding rectangle of the paper piece as drawn, including seam allowances. For a piece cut
   * on the fold it is the drawn half, with the fold on its left.
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

  /** How often a drawn edge occurs on the garment: a fold doubles it. */
  public int occurrences() {
    return onFold ? 2 * count : count;
  }

  /** Its paper size in a given size. */
  public Optional<Box> box(String sizeName) {
    return Optional.ofNullable(boxes.get(sizeName));
  }

  /** The edge with an id. */
  public Optional<Edge> edge(String edgeId) {
    return edges.stream().filter(edge -> edge.id().equals(edgeId)).findFirst();
  }

  /** Whether it has a line or an edge with this id. */
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
