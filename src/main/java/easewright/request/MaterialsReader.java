package easewright.request;

import easewright.cloth.ClothTest;
import easewright.cloth.ElasticTest;
import easewright.cloth.StretchTest;
import easewright.diagnosis.ClothReport;
import easewright.diagnosis.ElasticReport;
import easewright.diagnosis.GarmentMeasurements;
import easewright.diagnosis.Making;
import easewright.measure.ArealWeight;
import easewright.measure.Force;
import easewright.measure.Length;
import easewright.measure.Quantity;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Reads the toile, its cloths, its elastic and how it was sewn. Bounds are in millimetres, wide
 * enough for anything that can be sewn and narrow enough to catch a wrong unit.
 */
final class MaterialsReader {
  private static final String[] ROLES = {"main", "lining", "support"};

  private MaterialsReader() {}

  static GarmentMeasurements garment(RequestField spot) {
    spot = spot.fields("underband", "bust");
    return new GarmentMeasurements(
        spot.at("underband").length(200, 2500), spot.at("bust").length(200, 2500));
  }

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
    if (weight != null && !(weight.gramsPerM2() >= 10 && weight.gramsPerM2() <= 2000)) {
      spot.at("weight")
          .impossible(
              "No cloth to sew weighs this.",
              "Check the unit: from 10 g/m² to 2000 g/m² is possible.");
    }
    if (!spot.at("around").isWritten()
        && (spot.at("along").isWritten() || !spot.at("weight").isWritten())) {
      spot.at("around")
          .needed("Test the direction that goes around the body: marked, stretched, relaxed.");
    }
    return new ClothReport(around == null ? null : new ClothTest(around, along), weight);
  }

  private static StretchTest stretch(RequestField spot) {
    spot = spot.fields("marked", "stretched", "relaxed");
    if (!spot.isWritten()) {
      return null;
    }
    Length marked = needed(spot.at("marked"), 10, 2000);
    Length stretched = needed(spot.at("stretched"), 10, 12000);
    Length relaxed = spot.at("relaxed").length(10, 12000);
    if (marked == null || stretched == null) {
      return null;
    }
    try {
      return new StretchTest(marked.mm(), stretched.mm(), relaxed == null ? null : relaxed.mm());
    } catch (IllegalArgumentException impossible) {
      spot.impossible(
          impossible.getMessage(),
          "Read the same marks three times: at rest, held stretched, and after letting go.");
      return null;
    }
  }

  static ElasticReport elastic(RequestField spot) {
    spot = spot.fields("width", "relaxed", "stretched", "load", "full", "cut");
    if (!spot.isWritten()) {
      return null;
    }
    Length width = spot.at("width").length(2, 300);
    Length cut = spot.at("cut").length(100, 2500);
    boolean tested =
        spot.at("relaxed").isWritten()
            || spot.at("stretched").isWritten()
            || spot.at("load").isWritten()
            || spot.at("full").isWritten();
    return new ElasticReport(tested ? hung(spot, width) : null, width, cut);
  }

  private static ElasticTest hung(RequestField spot, Length width) {
    Length relaxed = needed(spot.at("relaxed"), 10, 2000);
    Length stretched = needed(spot.at("stretched"), 10, 12000);
    Force load = spot.at("load").quantity(Quantity::force);
    Length full = spot.at("full").length(10, 12000);
    if (!spot.at("width").isWritten()) {
      spot.at("width").needed("Write the elastic's width: \"40 mm\" or \"1 1/2 in\".");
    }
    if (!spot.at("load").isWritten()) {
      spot.at("load").needed("Write the weight that was hung from it: \"500 gf\" or \"5 N\".");
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
    } catch (IllegalArgumentException impossible) {
      spot.impossible(
          impossible.getMessage(),
          "Mark 20 cm at rest, hang a known weight from the elastic, and read the marks again.");
      return null;
    }
  }

  static Making making(RequestField spot) {
    spot = spot.fields("seamAllowancePlanned", "seamAllowanceSewn", "seams");
    return new Making(
        spot.at("seamAllowancePlanned").length(0, 60),
        spot.at("seamAllowanceSewn").length(0, 60),
        spot.at("seams").count(1, 60));
  }

  private static Length needed(RequestField spot, double leastMm, double mostMm) {
    if (!spot.isWritten()) {
      spot.needed("Write the length with its unit: \"10 cm\" or \"4 in\".");
    }
    return spot.length(leastMm, mostMm);
  }
}
