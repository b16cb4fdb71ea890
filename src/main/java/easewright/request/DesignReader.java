package easewright.request;

import easewright.fitting.Design;
import easewright.fitting.Design.Drafted;
import easewright.measure.Length;
import easewright.measure.Percent;
import easewright.measure.Quantity;
import java.util.List;

/** Reads the design of a pattern that has no sheet. */
final class DesignReader {
  private DesignReader() {}

  /**
   * @param bySheet whether a sheet says all this already
   */
  static Design read(RequestField spot, boolean bySheet) {
    if (spot.isWritten() && bySheet) {
      spot.cannotBe("fault-design-beside-a-sheet");
    }
    spot =
        spot.fields(
            "back",
            "closing",
            "front",
            "supportLayer",
            "lining",
            "stretchAsked",
            "seamAllowance",
            "seamsAround",
            "drafted");
    return new Design(
        spot.at("back").oneOf(List.of("racer", "rounded", "straight", "crossed")),
        spot.at("closing").oneOf(List.of("pull-on", "back", "front")),
        spot.at("front").oneOf(List.of("one-piece", "shaped-seam", "darts")),
        spot.at("supportLayer").oneOf(List.of("none", "single", "double")),
        spot.at("lining").oneOf(List.of("none", "part", "full")),
        stretch(spot.at("stretchAsked")),
        spot.at("seamAllowance").length(null, "widest-seam-allowance"),
        spot.at("seamsAround").count(1, MaterialsReader.MOST_SEAMS),
        drafted(spot.at("drafted")));
  }

  private static Double stretch(RequestField spot) {
    Percent asked = spot.quantity(Quantity::percent);
    if (asked == null) {
      return null;
    }
    double most = spot.faults().words().bound("most-stretch-asked");
    if (!(asked.fraction() > 0 && asked.fraction() <= most)) {
      spot.cannotBe("fault-stretch-asked", "most", Math.round(most * 100) + " %");
      return null;
    }
    return asked.fraction();
  }

  private static Drafted drafted(RequestField spot) {
    spot =
        spot.fields(
            "underband", "bust", "shoulderToBustPoint", "shoulderToUnderbust", "bustPointWidth");
    return new Drafted(
        spot.at("underband").length("least-girth-of-a-garment", "most-girth-of-a-garment"),
        spot.at("bust").length("least-girth-of-a-garment", "most-girth-of-a-garment"),
        drawn(spot.at("shoulderToBustPoint")),
        drawn(spot.at("shoulderToUnderbust")),
        drawn(spot.at("bustPointWidth")));
  }

  private static Length drawn(RequestField spot) {
    return spot.length("shortest-edge", "longest-drafted-length");
  }
}
