package easewright.rulebook;

import java.util.List;

/** Needles, stitches and the usual order of seams: {@code practice/sewing.yaml}. */
public record SewingNotes(List<Needle> needles, List<Stitch> stitches, List<SeamTurn> seams) {

  /**
   * When a seam usually has its turn.
   *
   * @param seam id of its edges
   * @param sewn "first" or "last"; seams that are not listed come between
   */
  public record SeamTurn(String seam, String sewn, String why, String source) {}

  /** The turn of a seam: the lower comes first; 0 for one that is not listed. */
  public int turn(String seam) {
    for (int i = 0; i < seams.size(); i++) {
      if (seams.get(i).seam().equals(seam)) {
        return seams.get(i).sewn().equals("first") ? i - seams.size() : i + 1;
      }
    }
    return 0;
  }

  /**
   * A needle.
   *
   * @param heavy whether it is for heavy cloth
   */
  public record Needle(String needle, boolean heavy, String use, String source) {}

  /**
   * A stitch.
   *
   * @param at "seams" for edges sewn to one another, "layers" for all edges of inner layers, or
   *     null
   * @param finish words of the finish of an edge it is for, or null
   * @param iso4915 its class, three digits
   * @param thread length of thread in lengths of seam
   */
  public record Stitch(
      String use,
      String at,
      List<String> finish,
      String iso4915,
      String name,
      String home,
      String stretch,
      double thread,
      String source) {}
}
