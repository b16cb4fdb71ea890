package easewright.fitting;

import easewright.measure.Length;
import java.util.List;
import java.util.Optional;

/**
 * The finished toile laid flat and not stretched, each length null when not measured.
 *
 * @param underband along the lower edge, all round
 * @param bust around the fullest part, all round
 * @param bandCloth the band's cloth, all round, before its elastic was put on
 * @param strapWidth across a strap
 * @param strapLength along a strap, from seam to seam
 * @param edges finished edges, in the order in which they were measured
 */
public record GarmentMeasurements(
    Length underband,
    Length bust,
    Length bandCloth,
    Length strapWidth,
    Length strapLength,
    List<MeasuredEdge> edges) {

  /** Nothing was measured. */
  public static final GarmentMeasurements NONE =
      new GarmentMeasurements(null, null, null, null, null, List.of());

  public GarmentMeasurements {
    edges = List.copyOf(edges);
  }

  /** The finished underband, as said of the whole or of its edge; null when not measured. */
  public Length underband() {
    return underband != null
        ? underband
        : edge(GarmentEdge.UNDERBAND).map(MeasuredEdge::length).orElse(null);
  }

  /** What was measured of an edge, if anything was. */
  public Optional<MeasuredEdge> edge(GarmentEdge edge) {
    return edges.stream().filter(one -> one.edge() == edge).findFirst();
  }
}
