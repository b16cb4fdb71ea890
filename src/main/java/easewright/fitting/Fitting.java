package easewright.fitting;

import easewright.measure.BodyMeasurements;
import easewright.measure.Length;
import easewright.measure.Measuring;
import easewright.measure.UnitSystem;
import easewright.pattern.PatternSheet;
import easewright.size.Region;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One try-on as it was reported: nothing derived, nothing judged. Whatever was not said is null or
 * empty. Maps and lists keep the order in which things were reported.
 *
 * @param units the units to answer in
 * @param family id of the family of garments it is about
 * @param body what was measured on the body; {@link BodyMeasurements#NONE} when nothing was
 * @param measuredHow how each body measurement was taken, one method for each measuring, by the
 *     wire name of the measurement
 * @param sheet the pattern, shipped or sent along; null when not said
 * @param sizeCut the size that was cut, a size of the sheet if there is one; null when not said
 * @param sizeSystem where the size cut is a label of; null when not said
 * @param choices the option taken of each choice, by the choice's id
 * @param design what is known of a pattern without a sheet; {@link Design#NONE} when nothing is
 * @param garment the toile itself, measured flat; {@link GarmentMeasurements#NONE} when it was not
 * @param cloths each cloth described, by role: "main", "lining" or "support"
 * @param elastic the band elastic; null when not said
 * @param making how it was sewn
 * @param signs what was seen or felt, or was looked for and not seen
 * @param fine ids of areas in which all is well
 * @param trials changes held, pinned or basted for a look, in the order they were tried
 * @param earlier changes made before this try-on, oldest first
 * @param earlierSizes toiles sewn before in other sizes, oldest first
 * @param circumstances what else bears on comfort and safety
 * @param whyNot ids of causes the asker wants compared with the likeliest
 * @param asksAbout ids of adjustments the asker asks whether to make
 * @param asksWhatToDo whether the asker asks what to do about what was seen, and so is bothered by
 *     it
 * @param couldNotTell ids of signs already asked about that the wearer could not tell: no evidence,
 *     and not asked again
 */
public record Fitting(
    UnitSystem units,
    String family,
    BodyMeasurements body,
    Map<String, List<Measuring>> measuredHow,
    PatternSheet sheet,
    String sizeCut,
    Region sizeSystem,
    Map<String, String> choices,
    Design design,
    GarmentMeasurements garment,
    Map<String, ClothReport> cloths,
    ElasticReport elastic,
    Making making,
    List<ReportedSign> signs,
    List<String> fine,
    List<Trial> trials,
    List<EarlierAdjustment> earlier,
    List<EarlierSize> earlierSizes,
    Circumstances circumstances,
    List<String> whyNot,
    List<String> asksAbout,
    boolean asksWhatToDo,
    List<String> couldNotTell) {

  public Fitting {
    measuredHow = InOrder.copy(measuredHow);
    choices = InOrder.copy(choices);
    cloths = InOrder.copy(cloths);
    signs = List.copyOf(signs);
    fine = List.copyOf(fine);
    trials = List.copyOf(trials);
    earlier = List.copyOf(earlier);
    earlierSizes = List.copyOf(earlierSizes);
    whyNot = List.copyOf(whyNot);
    asksAbout = List.copyOf(asksAbout);
    couldNotTell = List.copyOf(couldNotTell);
  }

  /** The same with these signs. */
  public Fitting withSigns(List<ReportedSign> reported) {
    return new Fitting(
        units,
        family,
        body,
        measuredHow,
        sheet,
        sizeCut,
        sizeSystem,
        choices,
        design,
        garment,
        cloths,
        elastic,
        making,
        reported,
        fine,
        trials,
        earlier,
        earlierSizes,
        circumstances,
        whyNot,
        asksAbout,
        asksWhatToDo,
        couldNotTell);
  }

  /** Ids of the signs seen on one side only. */
  public List<String> onOneSide() {
    return signs.stream()
        .filter(sign -> sign.present() && isOnOneSide(sign))
        .map(ReportedSign::id)
        .toList();
  }

  /** Whether it was seen on one side, and not on the other in a report of its own. */
  public boolean isOnOneSide(ReportedSign sign) {
    return sign.oneSided()
        && signs.stream()
            .filter(one -> one.present() && one.id().equals(sign.id()))
            .allMatch(one -> sign.side().equals(one.side()) || !one.oneSided());
  }

  /**
   * What was measured of an edge, with what was said of the band's elastic; empty if nothing was.
   */
  public Optional<MeasuredEdge> edge(GarmentEdge which) {
    Optional<MeasuredEdge> measured = garment.edge(which);
    return which != GarmentEdge.UNDERBAND || elastic == null || elastic.cut() == null
        ? measured
        : Optional.of(
            new MeasuredEdge(
                which,
                garment.underband(),
                measured.map(MeasuredEdge::drafted).orElse(null),
                new MeasuredEdge.EdgeElastic(elastic.cut(), elastic.width(), null, null)));
  }

  /** The length cut of the band's elastic, joining included; null when not said. */
  public Length bandElasticCut() {
    return edge(GarmentEdge.UNDERBAND).map(MeasuredEdge::elasticCut).orElse(null);
  }
}
