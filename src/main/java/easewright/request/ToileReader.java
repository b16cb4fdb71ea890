package easewright.request;

import easewright.fitting.GarmentEdge;
import easewright.fitting.GarmentMeasurements;
import easewright.fitting.MeasuredEdge;
import easewright.fitting.MeasuredEdge.EdgeElastic;
import easewright.measure.Length;
import java.util.ArrayList;
import java.util.List;

/** Reads what was measured of the finished toile. Bounds are parameters of the rule book. */
final class ToileReader {
  static final List<String> KINDS =
      List.of("flat", "plush", "fold-over", "clear", "ribbed", "cord");
  static final List<String> PUT_ON = List.of("turned", "bound", "casing", "topstitched");

  private ToileReader() {}

  static GarmentMeasurements read(RequestField spot) {
    spot = spot.fields("underband", "bust", "bandCloth", "strapWidth", "strapLength", "edges");
    return new GarmentMeasurements(
        girth(spot.at("underband")),
        girth(spot.at("bust")),
        girth(spot.at("bandCloth")),
        spot.at("strapWidth").length("narrowest-strap", "widest-strap"),
        spot.at("strapLength").length("shortest-edge", "longest-strap"),
        edges(spot.at("edges")));
  }

  private static Length girth(RequestField spot) {
    return spot.length("least-girth-of-a-garment", "most-girth-of-a-garment");
  }

  private static List<MeasuredEdge> edges(RequestField list) {
    List<MeasuredEdge> edges = new ArrayList<>();
    for (RequestField item : list.items(GarmentEdge.values().length)) {
      RequestField spot = item.fields("edge", "length", "drafted", "elastic");
      if (spot.isWritten()) {
        MeasuredEdge edge = edge(spot);
        if (edge != null && edges.stream().anyMatch(one -> one.edge() == edge.edge())) {
          spot.cannotBe("fault-edge-twice");
        } else if (edge != null) {
          edges.add(edge);
        }
      }
    }
    return edges;
  }

  private static MeasuredEdge edge(RequestField spot) {
    if (!spot.at("edge").isWritten()) {
      spot.at("edge").needs("fault-edge-missing");
    }
    String name = spot.at("edge").oneOf(GarmentEdge.wireNames());
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
