package easewright.fitting;

import easewright.measure.Length;

/**
 * A finished edge of the toile.
 *
 * @param edge which one
 * @param length along it, relaxed, all round; of one armhole. Null when not measured
 * @param drafted what the pattern states for it, before any elastic; null when not said
 * @param elastic what finishes it; null when not said
 */
public record MeasuredEdge(GarmentEdge edge, Length length, Length drafted, EdgeElastic elastic) {

  /**
   * The elastic of an edge, each null when not said.
   *
   * @param cut the length that was cut for the edge, joining included
   * @param width of the elastic
   * @param kind "flat", "plush", "fold-over", "clear", "ribbed" or "cord"
   * @param putOn "turned", "bound", "casing" or "topstitched"
   */
  public record EdgeElastic(Length cut, Length width, String kind, String putOn) {}

  /** The length cut of its elastic; null when not said. */
  public Length elasticCut() {
    return elastic == null ? null : elastic.cut();
  }
}
