package easewright.rulebook;

import java.util.List;

/** Needles and stitches: {@code practice/sewing.yaml}. */
public record SewingNotes(List<Needle> needles, List<Stitch> stitches) {

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
