package easewright.request;

import com.fasterxml.jackson.databind.JsonNode;
import easewright.diagnosis.EarlierAdjustment;
import easewright.diagnosis.Fitting;
import easewright.diagnosis.GarmentMeasurements;
import easewright.diagnosis.ReportedSign;
import easewright.measure.BodyMeasurements;
import easewright.measure.Length;
import easewright.measure.UnitSystem;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Reads a fitting from JSON and reports all its faults at once, each with a JSON Pointer (RFC
 * 6901), the problem and the remedy. Throws only {@link FaultyRequest}.
 */
public final class FittingReader {
  static final int MOST_SIGNS = 60;
  static final int MOST_EARLIER = 20;
  static final int MOST_WHY_NOT = 10;
  static final int MOST_COULD_NOT_TELL = 60;

  private final KnownNames known;

  /**
   * @param known the names a request may use
   */
  public FittingReader(KnownNames known) {
    this.known = known;
  }

  /**
   * Reads one fitting.
   *
   * @throws FaultyRequest with every fault, if there is any
   */
  public Fitting read(JsonNode json) {
    Faults faults = new Faults(known.words());
    RequestField root = new RequestField(json, "", faults);
    Fitting fitting = read(root);
    if (faults.none() && !saysAnything(fitting)) {
      root.cannotBe("fault-fitting-of-nothing");
    }
    faults.refuse();
    return fitting;
  }

  private Fitting read(RequestField root) {
    root.fields(
        "units",
        "body",
        "measuredBy",
        "pattern",
        "sizeCut",
        "choices",
        "garment",
        "cloth",
        "elastic",
        "making",
        "signs",
        "earlier",
        "circumstances",
        "whyNot",
        "couldNotTell",
        WordsToReview.FIELD,
        "asked");
    WordsToReview.check(root.at(WordsToReview.FIELD));
    root.at("asked").oneOf(known.signs());
    UnitSystem units = units(root);
    BodyReader body = new BodyReader(root.at("body"), root.at("measuredBy"), known.plausibility());
    PatternReader pattern =
        new PatternReader(
            root.at("pattern"), root.at("sizeCut"), root.at("choices"), known.sheets());
    return new Fitting(
        units,
        body.measurements(),
        body.how(),
        pattern.sheet(),
        pattern.sizeCut(),
        pattern.choices(),
        MaterialsReader.garment(root.at("garment")),
        MaterialsReader.cloths(root.at("cloth")),
        MaterialsReader.elastic(root.at("elastic")),
        MaterialsReader.making(root.at("making")),
        signs(root.at("signs")),
        earlier(root.at("earlier")),
        CircumstancesReader.read(root.at("circumstances")),
        once(root.at("whyNot"), MOST_WHY_NOT, known.causes(), "cause"),
        once(root.at("couldNotTell"), MOST_COULD_NOT_TELL, known.signs(), "sign"));
  }

  /** The units to answer in: those requested, otherwise those of the first length. */
  static UnitSystem units(RequestField root) {
    String units = root.at("units").oneOf(List.of("metric", "imperial"));
    return units == null
        ? FirstLength.system(root.node()).orElse(UnitSystem.METRIC)
        : units.equals("metric") ? UnitSystem.METRIC : UnitSystem.IMPERIAL;
  }

  List<ReportedSign> signs(RequestField list) {
    List<ReportedSign> signs = new ArrayList<>();
    for (RequestField item : list.items(MOST_SIGNS)) {
      RequestField spot = item.fields("sign", "seen", "place", "side", "degree", "amount");
      if (!spot.isWritten()) {
        continue;
      }
      String id = needed(spot.at("sign"), known.signs());
      boolean present = !"absent".equals(spot.at("seen").oneOf(List.of("present", "absent")));
      String place = spot.at("place").oneOf(known.places());
      String side = spot.at("side").oneOf(List.of("left", "right", "both"));
      String degree = spot.at("degree").oneOf(List.of("slight", "clear", "strong"));
      Length amount = spot.at("amount").length(null, "largest-amount");
      if (!present && (degree != null || amount != null)) {
        spot.cannotBe("fault-absent-sign");
      }
      if (id != null) {
        ReportedSign sign = new ReportedSign(id, present, place, side, degree, amount);
        if (signs.stream().anyMatch(sign::overlaps)) {
          spot.cannotBe("fault-sign-twice");
        }
        signs.add(sign);
      }
    }
    return signs;
  }

  private List<EarlierAdjustment> earlier(RequestField list) {
    List<EarlierAdjustment> earlier = new ArrayList<>();
    for (RequestField item : list.items(MOST_EARLIER)) {
      RequestField spot = item.fields("adjustment", "amount", "outcome");
      if (!spot.isWritten()) {
        continue;
      }
      String id = needed(spot.at("adjustment"), known.adjustments());
      Length amount = spot.at("amount").length(null, "largest-amount");
      String outcome = spot.at("outcome").oneOf(List.of("better", "same", "worse"));
      if (id != null) {
        earlier.add(new EarlierAdjustment(id, amount, outcome));
      }
    }
    return earlier;
  }

  private static List<String> once(
      RequestField list, int most, Collection<String> names, String what) {
    Set<String> ids = new LinkedHashSet<>();
    for (RequestField spot : list.items(most)) {
      String id = spot.oneOf(names);
      if (id != null && !ids.add(id)) {
        spot.cannotBe("fault-named-twice", "what", what);
      }
    }
    return List.copyOf(ids);
  }

  private static String needed(RequestField spot, Collection<String> names) {
    if (!spot.isWritten()) {
      spot.needs("fault-id-missing");
    }
    return spot.oneOf(names);
  }

  /** With less than this every answer would be a guess. */
  private static boolean saysAnything(Fitting fitting) {
    BodyMeasurements body = fitting.body();
    GarmentMeasurements garment = fitting.garment();
    long lengths =
        Stream.of(
                body.bust(),
                body.underbust(),
                body.upperChest(),
                body.bustPointWidth(),
                body.shoulderToBustPoint(),
                body.shoulderToUnderbust(),
                garment.underband(),
                garment.bust())
            .filter(Objects::nonNull)
            .count();
    return lengths >= 2
        || !fitting.signs().isEmpty()
        || !fitting.earlier().isEmpty()
        || !fitting.cloths().isEmpty()
        || fitting.elastic() != null
        || fitting.making().seamAllowanceSewn() != null
        || !fitting.circumstances().ids().isEmpty()
        || fitting.circumstances().monthsSinceOperation() != null;
  }
}
