package easewright.request;

import easewright.fitting.GarmentEdge;
import easewright.fitting.GarmentMeasurements;
import easewright.fitting.MeasuredEdge;
import easewright.fitting.MeasuredEdge.EdgeElastic;
import easewright.measure.Length;
import easewright.measure.Measures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads what was measured of the finished toile. Bounds are parameters of the rule book. */
final class ToileReader {
  static final List<String> KINDS =
      List.of("flat", "plush", "fold-over", "clear", "ribbed", "cord");
  static final List<String> PUT_ON = List.of("turned", "bound", "casing", "topstitched");

  private ToileReader() {}

  /**
   * @param measures what the family of garments has
   */
  static GarmentMeasurements read(RequestField spot, Measures measures) {
    List<String> fields = new ArrayList<>();
    measures.garment().forEach(one -> fields.add(one.id()));
    if (!measures.edges().isEmpty()) {
      fields.add("edges");
    }
    RequestField known = spot.fields(fields.toArray(String[]::new));
    Map<String, Length> lengths = new LinkedHashMap<>();
    for (Measures.OfGarment one : measures.garment()) {
      Length length = known.at(one.id()).length(one.least(), one.most());
      if (length != null) {
        lengths.put(one.id(), length);
      }
    }
    return new GarmentMeasurements(
        lengths,
        measures.edges().isEmpty() ? List.of() : edges(known.at("edges"), measures.edges()));
  }

  private static List<MeasuredEdge> edges(RequestField list, List<String> names) {
    List<MeasuredEdge> edges = new ArrayList<>();
    for (RequestField item : list.items(names.size())) {
      RequestField spot = item.fields("edge", "length", "drafted", "elastic");
      if (spot.isWritten()) {
        MeasuredEdge edge = edge(spot, names);
        if (edge != null && edges.stream().anyMatch(one -> one.edge() == edge.edge())) {
          spot.cannotBe("fault-edge-twice");
        } else if (edge != null) {
          edges.add(edge);
        }
      }
    }
    return edges;
  }

  private static MeasuredEdge edge(RequestField spot, List<String> names) {
    if (!spot.at("edge").isWritten()) {
      spot.at("edge").needs("fault-edge-missing");
    }
    String name = spot.at("edge").oneOf(names);
    Length length = spot.at("length").length("shortest-edge", "most-girth-of-a-garment");
    Length drafted = spot.at("drafted").length("shortest-edge", "most-girth-of-a-garment");
    RequestField elastic = spot.at("elastic").fields("cut", "width", "kind", "putOn");
    if (!spot.at("length").isWritten() && !elastic.isWritten()) {
      spot.cannotBe("fault-edge-of-nothing");
    }
    EdgeElastic read = elastic.isWritten() ? elastic(elastic) : null;
    return GarmentEdge.named(name == null ? "" : name)
        .map(edge -> new MeasuredEdge(edge, length, drafted, read))
        .orElse(null);
  }

  private static EdgeElastic elastic(RequestField spot) {
    return new EdgeElastic(
        spot.at("cut").length("shortest-edge", "most-girth-of-a-garment"),
        spot.at("width").length("narrowest-elastic", "widest-elastic"),
        spot.at("kind").oneOf(KINDS),
        spot.at("putOn").oneOf(PUT_ON));
  }
}
