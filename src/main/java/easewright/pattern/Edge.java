package easewright.pattern;

import java.util.List;
import java.util.Optional;

/**
 * One edge of a piece as drawn; on a piece cut on the fold, of the half that is drawn.
 *
 * @param id trade term, unique on its piece, e.g. "side-seam"
 * @param length the finished measurement that gives its sewn length, if the sheet states it
 * @param part how much of that measurement it is, a fraction
 * @param sewnTo the edges it is sewn to; those of pieces not cut are ignored
 * @param finish how it is finished if it is sewn to nothing, e.g. "elastic"
 * @param crosses girths its seam crosses, by trade term, e.g. "bust"
 * @param notches number of matching marks
 */
public record Edge(
    String id,
    Optional<String> length,
    double part,
    List<Ref> sewnTo,
    Optional<String> finish,
    List<String> crosses,
    int notches) {

  /**
   * @throws IllegalArgumentException if the part is not above zero
   */
  public Edge {
    if (!(part > 0)) {
      throw new SheetRefusal("part-of-zero");
    }
    sewnTo = List.copyOf(sewnTo);
    crosses = List.copyOf(crosses);
  }

  /**
   * An edge of a piece, written "piece/edge" in a sheet.
   *
   * @param piece id of the piece
   * @param edge id of the edge on it
   */
  public record Ref(String piece, String edge) {

    static Ref parse(String text) {
      int slash = text.indexOf('/');
      return new Ref(text.substring(0, slash), text.substring(slash + 1));
    }

    @Override
    public String toString() {
      return piece + "/" + edge;
    }
  }
}
