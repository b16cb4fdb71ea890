package easewright.diagnosis;

import easewright.measure.BodyMeasurements;
import easewright.measure.MeasuringMethod;
import easewright.measure.UnitSystem;
import easewright.pattern.PatternSheet;
import java.util.List;
import java.util.Map;

/**
 * One try-on as it was reported: nothing derived, nothing judged. Whatever was not said is null or
 * empty. Maps and lists keep the order in which things were reported.
 *
 * @param units the units to answer in
 * @param body what was measured on the body; {@link BodyMeasurements#NONE} when nothing was
 * @param measuredHow how each body measurement was taken, one method for each measuring, by the
 *     wire name of the measurement
 * @param sheet the pattern, shipped or sent along; null when not said
 * @param sizeCut the size that was cut, a size of the sheet if there is one; null when not said
 * @param choices the option taken of each choice, by the choice's id
 * @param garment the toile itself, measured flat
 * @param cloths each cloth described, by role: "main", "lining" or "support"
 * @param elastic the band elastic; null when not said
 * @param making how it was sewn
 * @param signs what was seen or felt, or was looked for and not seen
 * @param earlier changes made before this try-on, oldest first
 * @param circumstances what else bears on comfort and safety
 * @param whyNot ids of causes the asker wants compared with the likeliest
 * @param couldNotTell ids of signs already asked about that the wearer could not tell: no evidence,
 *     and not asked again
 */
public record Fitting(
    UnitSystem units,
    BodyMeasurements body,
    Map<String, List<MeasuringMethod>> measuredHow,
    PatternSheet sheet,
    String sizeCut,
    Map<String, String> choices,
    GarmentMeasurements garment,
    Map<String, ClothReport> cloths,
    ElasticReport elastic,
    Making making,
    List<ReportedSign> signs,
    List<EarlierAdjustment> earlier,
    Circumstances circumstances,
    List<String> whyNot,
    List<String> couldNotTell) {

  public Fitting {
    measuredHow = InOrder.copy(measuredHow);
    choices = InOrder.copy(choices);
    cloths = InOrder.copy(cloths);
    signs = List.copyOf(signs);
    earlier = List.copyOf(earlier);
    whyNot = List.copyOf(whyNot);
    couldNotTell = List.copyOf(couldNotTell);
  }
}
