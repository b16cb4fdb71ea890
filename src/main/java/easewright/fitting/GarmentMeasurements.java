package easewright.fitting;

import easewright.measure.Length;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The finished toile laid flat and not stretched. A rule book says which measurements there are;
 * those with a method of their own are the ones that formulas in the code work with.
 *
 * @param byName each length that was measured, by its name in requests, in the order of the rule
 *     book
 * @param edges finished edges, in the order in which they were measured
 */
public record GarmentMeasurements(Map<String, Length> byName, List<MeasuredEdge> edges) {

  /** Nothing was measured. */
  public static final GarmentMeasurements NONE = new GarmentMeasurements(Map.of(), List.of());

  public GarmentMeasurements {
    byName = InOrder.copy(byName);
    edges = List.copyOf(edges);
  }

  /**
   * A length by its name, as said of the whole or of the edge of that name; null if not measured.
   */
  public Length named(String name) {
    Length whole = byName.get(name);
    return whole != null
        ? whole
        : GarmentEdge.named(name).flatMap(this::edge).map(MeasuredEdge::length).orElse(null);
  }

  /** The finished underband, all round; null when not measured. */
  public Length underband() {
    return named("underband");
  }

  /** Around the fullest part, all round; null when not measured. */
  public Length bust() {
    return named("bust");
  }

  /** The band's cloth, all round, before its elastic was put on; null when not measured. */
  public Length bandCloth() {
    return named("bandCloth");
  }

  /** Across a strap; null when not measured. */
  public Length strapWidth() {
    return named("strapWidth");
  }

  /** Along a strap, from seam to seam; null when not measured. */
  public Length strapLength() {
    return named("strapLength");
  }

  /** What was measured of an edge, if anything was. */
  public Optional<MeasuredEdge> edge(GarmentEdge edge) {
    return edges.stream().filter(one -> one.edge() == edge).findFirst();
  }
}
