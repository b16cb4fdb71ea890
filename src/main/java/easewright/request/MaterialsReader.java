package easewright.request;

import easewright.cloth.ClothTest;
import easewright.cloth.ElasticTest;
import easewright.cloth.ImpossibleCloth;
import easewright.cloth.StretchTest;
import easewright.fitting.ClothReport;
import easewright.fitting.ElasticReport;
import easewright.fitting.Making;
import easewright.measure.ArealWeight;
import easewright.measure.Force;
import easewright.measure.Length;
import easewright.measure.Quantity;
import easewright.measure.Rounded;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Reads the cloths of the toile, its elastic and how it was sewn. Bounds are parameters of the rule
 * book.
 */
final class MaterialsReader {
  private static final String[] ROLES = {"main", "lining", "support"};

  /** As the contract has it. */
  static final int MOST_SEAMS = 60;

  private MaterialsReader() {}

  static Map<String, ClothReport> cloths(RequestField spot) {
    spot = spot.fields(ROLES);
    Map<String, ClothReport> cloths = new LinkedHashMap<>();
    for (String role : ROLES) {
      RequestField cloth = spot.at(role).fields("around", "along", "weight");
      if (cloth.isWritten()) {
        cloths.put(role, cloth(cloth));
      }
    }
    return cloths;
  }

  private static ClothReport cloth(RequestField spot) {
    StretchTest around = stretch(spot.at("around"));
    StretchTest along = stretch(spot.at("along"));
    ArealWeight weight = spot.at("weight").quantity(Quantity::arealWeight);
    if (weight != null) {
      weigh(spot.at("weight"), weight);
    }
    if (!spot.at("around").isWritten()
        && (spot.at("along").isWritten() || !spot.at("weight").isWritten())) {
      spot.at("around").needs("fault-test-around-missing");
    }
    return new ClothReport(around == null ? null : new ClothTest(around, along), weight);
  }

  private static void weigh(RequestField spot, ArealWeight weight) {
    double least = spot.faults().words().bound("lightest-cloth");
    double most = spot.faults().words().bound("heaviest-cloth");
    if (!(weight.gramsPerM2() >= least && weight.gramsPerM2() <= most)) {
      spot.cannotBe(
          "fault-weight-of-cloth", "least", Rounded.text(least, 0), "most", Rounded.text(most, 0));
    }
  }

  private static StretchTest stretch(RequestField spot) {
    spot = spot.fields("marked", "stretched", "relaxed");
    if (!spot.isWritten()) {
      return null;
    }
    Length marked = needed(spot.at("marked"), "most-marked-length");
    Length stretched = needed(spot.at("stretched"), "most-stretched-length");
    Length relaxed = spot.at("relaxed").length("least-marked-length", "most-stretched-length");
    if (marked == null || stretched == null) {
      return null;
    }
    try {
      return new StretchTest(marked.mm(), stretched.mm(), relaxed == null ? null : relaxed.mm());
    } catch (ImpossibleCloth impossible) {
      spot.cannotBe("fault-stretch-test", "problem", problem(spot, impossible));
      return null;
    }
  }

  private static String problem(RequestField spot, ImpossibleCloth impossible) {
    return spot.faults().words().say("impossible-" + impossible.key());
  }

  static ElasticReport elastic(RequestField spot) {
    spot = spot.fields("width", "relaxed", "stretched", "load", "full", "cut");
    if (!spot.isWritten()) {
      return null;
    }
    Length width = spot.at("width").length("narrowest-elastic", "widest-elastic");
    Length cut = spot.at("cut").length("shortest-elastic", "most-girth-of-a-garment");
    boolean tested =
        spot.at("relaxed").isWritten()
            || spot.at("stretched").isWritten()
            || spot.at("load").isWritten()
            || spot.at("full").isWritten();
    return new ElasticReport(tested ? hung(spot, width) : null, width, cut);
  }

  private static ElasticTest hung(RequestField spot, Length width) {
    Length relaxed = needed(spot.at("relaxed"), "most-marked-length");
    Length stretched = needed(spot.at("stretched"), "most-stretched-length");
    Force load = spot.at("load").quantity(Quantity::force);
    Length full = spot.at("full").length("least-marked-length", "most-stretched-length");
    if (!spot.at("width").isWritten()) {
      spot.at("width").needs("fault-elastic-width-missing");
    }
    if (!spot.at("load").isWritten()) {
      spot.at("load").needs("fault-elastic-weight-missing");
    }
    if (width == null || relaxed == null || stretched == null || load == null) {
      return null;
    }
    try {
      return new ElasticTest(
          width.mm(),
          relaxed.mm(),
          stretched.mm(),
          load.newtons(),
          full == null ? null : full.mm());
    } catch (ImpossibleCloth impossible) {
      spot.cannotBe("fault-elastic-test", "problem", problem(spot, impossible));
      return null;
    }
  }

  static Making making(RequestField spot) {
    spot = spot.fields("seamAllowancePlanned", "seamAllowanceSewn", "seams");
    return new Making(
        spot.at("seamAllowancePlanned").length(null, "widest-seam-allowance"),
        spot.at("seamAllowanceSewn").length(null, "widest-seam-allowance"),
        spot.at("seams").count(1, MOST_SEAMS));
  }

  private static Length needed(RequestField spot, String mostId) {
    if (!spot.isWritten()) {
      spot.needs("fault-length-missing");
    }
    return spot.length("least-marked-length", mostId);
  }
}
