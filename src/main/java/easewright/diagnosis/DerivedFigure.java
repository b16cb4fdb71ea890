package easewright.diagnosis;

import static easewright.diagnosis.GivenNumber.ALLOWANCE_PLANNED;
import static easewright.diagnosis.GivenNumber.ALLOWANCE_SEWN;
import static easewright.diagnosis.GivenNumber.BUST;
import static easewright.diagnosis.GivenNumber.DRAFTED_BAND_STRAIN;
import static easewright.diagnosis.GivenNumber.DRAFTED_BUST_POINT_WIDTH;
import static easewright.diagnosis.GivenNumber.DRAFTED_BUST_STRAIN;
import static easewright.diagnosis.GivenNumber.DRAFTED_DIFFERENCE;
import static easewright.diagnosis.GivenNumber.DRAFTED_SHOULDER_TO_BUST_POINT;
import static easewright.diagnosis.GivenNumber.DRAFTED_SHOULDER_TO_UNDERBUST;
import static easewright.diagnosis.GivenNumber.DRAFTED_UNDERBUST;
import static easewright.diagnosis.GivenNumber.ELASTIC_CUT;
import static easewright.diagnosis.GivenNumber.ELASTIC_TEST;
import static easewright.diagnosis.GivenNumber.FINISHED_BUST;
import static easewright.diagnosis.GivenNumber.NEXT_SIZE;
import static easewright.diagnosis.GivenNumber.SEAMS;
import static easewright.diagnosis.GivenNumber.SHOULDER_TO_BUST_POINT;
import static easewright.diagnosis.GivenNumber.SHOULDER_TO_UNDERBUST;
import static easewright.diagnosis.GivenNumber.SIZE;
import static easewright.diagnosis.GivenNumber.UNDERBAND;
import static easewright.diagnosis.GivenNumber.UNDERBUST;

import easewright.diagnosis.Formula.Worked;
import java.util.Locale;
import java.util.function.Function;

/**
 * Every figure that rules may judge, besides those of a single layer ({@link LayerFigure}) and the
 * amounts of signs. The name in rules is the constant's in small letters with hyphens. A figure
 * stands after those among its inputs.
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
  BAND_STRAIN("fraction", BodyFormulas::bandStrain, UNDERBUST, UNDERBAND),
  BAND_STRAIN_EXCESS("fraction", BodyFormulas::bandStrainExcess, BAND_STRAIN, DRAFTED_BAND_STRAIN),
  BUST_STRAIN_EXCESS(
      "fraction", BodyFormulas::bustStrainExcess, BUST, FINISHED_BUST, DRAFTED_BUST_STRAIN),
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
  BAND_PRESSURE("kPa", MakingFormulas::bandPressure, ELASTIC_TENSION, UNDERBUST),
  ALLOWANCE_GIRTH_ERROR(
      "mm", MakingFormulas::allowanceGirthError, ALLOWANCE_SEWN, ALLOWANCE_PLANNED, SEAMS),
  MONTHS_SINCE_OPERATION(
      "months", MakingFormulas::monthsSinceOperation, GivenNumber.MONTHS_SINCE_OPERATION),
  NUMBER_OF_EARLIER_ROUNDS("count", MakingFormulas::earlierRounds);

  private final String unit;
  private final Formula formula;

  DerivedFigure(String unit, Formula formula) {
    this.unit = unit;
    this.formula = formula;
  }

  /** Its sentence is "figure-" and its id. */
  DerivedFigure(String unit, Function<FittingNumbers, Worked> work, Input... inputs) {
    this.unit = unit;
    this.formula = Formula.of("figure-" + id(), work, inputs);
  }

  /** The name in rules. */
  String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
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
    return numbers.figures().containsKey(id());
  }
}
