package easewright.diagnosis;

import static easewright.diagnosis.GivenNumber.ALLOWANCE_PLANNED;
import static easewright.diagnosis.GivenNumber.ALLOWANCE_SEWN;
import static easewright.diagnosis.GivenNumber.BUST;
import static easewright.diagnosis.GivenNumber.DRAFTED_BUST_POINT_WIDTH;
import static easewright.diagnosis.GivenNumber.DRAFTED_DIFFERENCE;
import static easewright.diagnosis.GivenNumber.DRAFTED_SHOULDER_TO_BUST_POINT;
import static easewright.diagnosis.GivenNumber.DRAFTED_SHOULDER_TO_UNDERBUST;
import static easewright.diagnosis.GivenNumber.DRAFTED_UNDERBUST;
import static easewright.diagnosis.GivenNumber.ELASTIC_CUT;
import static easewright.diagnosis.GivenNumber.ELASTIC_TEST;
import static easewright.diagnosis.GivenNumber.MEASURED_UNDERBAND;
import static easewright.diagnosis.GivenNumber.NEXT_SIZE;
import static easewright.diagnosis.GivenNumber.SEAMS;
import static easewright.diagnosis.GivenNumber.SHOULDER_TO_BUST_POINT;
import static easewright.diagnosis.GivenNumber.SHOULDER_TO_UNDERBUST;
import static easewright.diagnosis.GivenNumber.SIZE;
import static easewright.diagnosis.GivenNumber.UNDERBUST;

import easewright.diagnosis.Formula.Worked;
import java.util.Locale;
import java.util.function.Function;

/**
 * Every figure that rules may judge, besides those of a single layer ({@link LayerFigure}) or edge
 * ({@link EdgeFigure}) and the amounts of signs. The name in rules is the constant's in small
 * letters with hyphens. A figure stands after those among its inputs.
 */
enum DerivedFigure implements Input {
  BUST_DIFFERENCE("mm", BodyFormulas::bustDifference, BUST, UNDERBUST),
  CUP_SHORTFALL("mm", BodyFormulas::cupShortfall, BUST_DIFFERENCE, DRAFTED_DIFFERENCE),
  CUP_VOLUME(
      "ml",
      Formula.trying(
          "figure-cup-volume",
          BodyFormulas::cupVolume,
          BUST_DIFFERENCE,
          GivenNumber.BUST_POINT_WIDTH)),
  BAND_SHORTFALL("mm", BodyFormulas::bandShortfall, UNDERBUST, DRAFTED_UNDERBUST),
  BAND_LENGTH_EXCESS("mm", BandAmounts::lengthExcess, UNDERBUST, MEASURED_UNDERBAND),
  UNDERBAND_OVER_DRAFTED(
      "mm", DraftFormulas::underband, MEASURED_UNDERBAND, GivenNumber.DRAFTED_UNDERBAND),
  BAND_CLOTH_OVER_DRAFTED(
      "mm", DraftFormulas::bandCloth, GivenNumber.BAND_CLOTH, GivenNumber.DRAFTED_BAND_CLOTH),
  BUST_OVER_DRAFTED("mm", DraftFormulas::bust, GivenNumber.MEASURED_BUST, GivenNumber.DRAFTED_BUST),
  DISTANCE_FROM_THE_DRAFT(
      "fraction", Formula.trying("figure-distance-from-the-draft", DraftFormulas::distance)),
  GREATEST_OVER_DRAFTED(
      "fraction", Formula.trying("figure-greatest-over-drafted", DraftFormulas::greatest)),
  STRAP_WIDTH("mm", DraftFormulas::strapWidth, GivenNumber.MEASURED_STRAP_WIDTH),
  STRAP_WIDTH_OVER_DRAFTED(
      "mm",
      DraftFormulas::strapWidthOverDrafted,
      GivenNumber.MEASURED_STRAP_WIDTH,
      GivenNumber.DRAFTED_STRAP_WIDTH),
  STRAP_LENGTH_OVER_DRAFTED(
      "mm",
      DraftFormulas::strapLengthOverDrafted,
      GivenNumber.MEASURED_STRAP_LENGTH,
      GivenNumber.DRAFTED_STRAP_LENGTH),
  BUST_POINT_WIDTH_EXCESS(
      "mm",
      BodyFormulas::bustPointWidthExcess,
      GivenNumber.BUST_POINT_WIDTH,
      DRAFTED_BUST_POINT_WIDTH),
  APEX_DROP("mm", BodyFormulas::apexDrop, SHOULDER_TO_BUST_POINT, DRAFTED_SHOULDER_TO_BUST_POINT),
  FRONT_LENGTH_SHORTFALL(
      "mm",
      BodyFormulas::frontLengthShortfall,
      SHOULDER_TO_UNDERBUST,
      DRAFTED_SHOULDER_TO_UNDERBUST),

  STRETCH_DIRECTION_MARGIN(
      "fraction",
      ClothFormulas::directionMargin,
      LayerFigure.STRETCH_AROUND.of("main"),
      LayerFigure.STRETCH_ALONG.of("main")),
  STRETCH_MARGIN_AROUND(
      "fraction", Formula.trying("figure-stretch-margin", ClothFormulas::stretchMarginAround)),
  WIDTH_FACTOR("factor", ClothFormulas::widthFactor, STRETCH_MARGIN_AROUND),
  STRETCH_MARGIN_ALONG(
      "fraction", Formula.trying("figure-stretch-margin", ClothFormulas::stretchMarginAlong)),
  RECOVERY_MARGIN(
      "fraction", Formula.trying("figure-recovery-margin", ClothFormulas::recoveryMargin)),

  BEST_SIZE_PROBABILITY("fraction", MakingFormulas::bestSize, SIZE),
  RUNNER_UP_SIZE_PROBABILITY("fraction", MakingFormulas::nextSize, NEXT_SIZE),
  ELASTIC_TENSION(
      "N/cm",
      Formula.trying(
          "figure-elastic-tension",
          MakingFormulas::elasticTension,
          ELASTIC_TEST,
          ELASTIC_CUT,
          UNDERBUST)),
  BAND_CLOTH_TENSION(
      "N/cm",
      Formula.trying(
          "figure-band-cloth-tension",
          BandClothFormulas::tension,
          UNDERBUST,
          LayerFigure.STRETCH_AROUND.of("main"))),
  BAND_CLOTH_STRETCH_USED(
      "fraction",
      Formula.trying(
          "figure-band-cloth-stretch-used",
          BandClothFormulas::stretchUsed,
          UNDERBUST,
          GivenNumber.BAND_CLOTH,
          LayerFigure.STRETCH_AROUND.of("main"))),
  ELASTIC_SHARE_OF_THE_BAND_CLOTH(
      "fraction", BandClothFormulas::elasticShare, ELASTIC_CUT, GivenNumber.BAND_CLOTH),
  BAND_PRESSURE("kPa", MakingFormulas::bandPressure, ELASTIC_TENSION, UNDERBUST),
  ALLOWANCE_GIRTH_ERROR(
      "mm", MakingFormulas::allowanceGirthError, ALLOWANCE_SEWN, ALLOWANCE_PLANNED, SEAMS),
  MONTHS_SINCE_OPERATION(
      "months", MakingFormulas::monthsSinceOperation, GivenNumber.MONTHS_SINCE_OPERATION),
  NUMBER_OF_EARLIER_ROUNDS("count", MakingFormulas::earlierRounds);

  private final String id;
  private final String unit;
  private final Formula formula;

  DerivedFigure(String unit, Formula formula) {
    this.id = inRules(name());
    this.unit = unit;
    this.formula = formula;
  }

  /** Its sentence is "figure-" and its id. */
  DerivedFigure(String unit, Function<FittingNumbers, Worked> work, Input... inputs) {
    this.id = inRules(name());
    this.unit = unit;
    this.formula = Formula.of("figure-" + id, work, inputs);
  }

  private static String inRules(String name) {
    return name.toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The name in rules. */
  String id() {
    return id;
  }

  /** Canonical unit. */
  String unit() {
    return unit;
  }

  Formula formula() {
    return formula;
  }

  @Override
  public boolean isGiven(FittingNumbers numbers) {
    return numbers.figures().containsKey(id);
  }
}
