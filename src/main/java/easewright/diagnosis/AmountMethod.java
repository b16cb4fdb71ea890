package easewright.diagnosis;

import static easewright.diagnosis.DerivedFigure.ALLOWANCE_GIRTH_ERROR;
import static easewright.diagnosis.DerivedFigure.APEX_DROP;
import static easewright.diagnosis.DerivedFigure.BUST_POINT_WIDTH_EXCESS;
import static easewright.diagnosis.DerivedFigure.CUP_SHORTFALL;
import static easewright.diagnosis.DerivedFigure.DISTANCE_FROM_THE_DRAFT;
import static easewright.diagnosis.DerivedFigure.FRONT_LENGTH_SHORTFALL;
import static easewright.diagnosis.GivenNumber.ELASTIC_CUT;
import static easewright.diagnosis.GivenNumber.ELASTIC_TEST;
import static easewright.diagnosis.GivenNumber.FINISHED_BUST;
import static easewright.diagnosis.GivenNumber.MEASURED_UNDERBAND;
import static easewright.diagnosis.GivenNumber.UNDERBAND;
import static easewright.diagnosis.GivenNumber.UNDERBUST;

import easewright.fitting.GarmentEdge;
import easewright.measure.BodyMeasurements;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * How the amount of an adjustment is found, in millimetres. The catalog names a method by its
 * {@link #id}. A wearer's own measure of a sign comes first; the formulas serve without one.
 */
enum AmountMethod {
  BAND_TAKE_IN(
      "band take-in",
      Spread.OVER_EDGES,
      AmountMethod::measureTheBand,
      Formula.of("amount-band-take-in", BandAmounts::takeIn, UNDERBUST, UNDERBAND),
      Formula.of("amount-band-take-in-pull", BandAmounts::pullOff, BandAmounts.PULLED_OFF)) {
    @Override
    Optional<Formula> slack() {
      return Optional.of(
          Formula.of(
              "amount-slack-of-the-band", BandAmounts::slack, UNDERBUST, MEASURED_UNDERBAND));
    }
  },
  BAND_LET_OUT(
      "band let-out",
      Spread.OVER_EDGES,
      AmountMethod::measureTheBand,
      Formula.of("amount-band-let-out", BandAmounts::letOut, UNDERBUST, UNDERBAND)),
  ELASTIC_CUT_LENGTH(
      "elastic cut length",
      Spread.WHOLE,
      numbers -> "measure-first-elastic",
      Formula.trying(
          "amount-elastic-cut-length", BandAmounts::elastic, ELASTIC_TEST, ELASTIC_CUT, UNDERBUST),
      Formula.trying("amount-edge-elastic", FigureAmounts::bandElasticShorter, ELASTIC_CUT)
          .bringsToThePlan(),
      Formula.of("amount-band-take-in", BandAmounts::takeIn, UNDERBUST, UNDERBAND),
      Formula.of("amount-band-take-in-pull", BandAmounts::pullOff, BandAmounts.PULLED_OFF)) {
    /** What an elastic of another edge measures is not the band's. */
    @Override
    boolean isMeasuredAt(String place) {
      return place == null
          || GarmentEdge.named(place).map(GarmentEdge.UNDERBAND::equals).orElse(true);
    }

    /** The elastic's own test tells how long it must be, whatever the band measures. */
    @Override
    List<Formula> formulas(FittingNumbers numbers) {
      List<Formula> ready = super.formulas(numbers);
      return formulas().get(0).isReady(numbers) ? ready.subList(0, 1) : ready;
    }
  },
  CUP_GIRTH(
      "cup girth",
      Spread.OVER_EDGES,
      AmountMethod::measureTheGirths,
      Formula.of("amount-cup-girth", CupAmounts::more, CUP_SHORTFALL)),
  CUP_GIRTH_LESS(
      "cup girth less",
      Spread.OVER_EDGES,
      AmountMethod::measureTheGirths,
      Formula.of("amount-cup-girth-less", CupAmounts::less, CUP_SHORTFALL)),
  PINCH("pinch", Spread.WHOLE),
  FOLD("fold", Spread.WHOLE),
  WIDTH_FOLD("width fold", Spread.OVER_EDGES),
  BUST_POINT_IN(
      "bust point in",
      Formula.of("amount-bust-point-half", FigureAmounts::bustPointIn, BUST_POINT_WIDTH_EXCESS)),
  BUST_POINT_OUT(
      "bust point out",
      Formula.of("amount-bust-point-half", FigureAmounts::bustPointOut, BUST_POINT_WIDTH_EXCESS)),
  BUST_POINT_UP(
      "bust point up", Formula.of("amount-bust-point", FigureAmounts::bustPointUp, APEX_DROP)),
  BUST_POINT_DOWN(
      "bust point down", Formula.of("amount-bust-point", FigureAmounts::bustPointDown, APEX_DROP)),
  STRAP_SLACK("strap slack", Spread.WHOLE),
  STRAP_DISTANCE("strap distance", Spread.WHOLE),
  FRONT_LENGTH(
      "front length",
      Spread.WHOLE,
      numbers -> "measure-first-length",
      Formula.of("amount-front-length", FigureAmounts::frontLonger, FRONT_LENGTH_SHORTFALL)),
  FRONT_LENGTH_LESS(
      "front length less",
      Spread.WHOLE,
      numbers -> "measure-first-length",
      Formula.of("amount-front-length-less", FigureAmounts::frontShorter, FRONT_LENGTH_SHORTFALL)),
  STRETCH_FACTOR(
      "stretch factor",
      Spread.OVER_EDGES,
      null,
      Formula.of(
          "amount-stretch-factor",
          FigureAmounts::stretchFactor,
          DerivedFigure.WIDTH_FACTOR,
          FINISHED_BUST)),
  ALLOWANCE_ERROR(
      "allowance error",
      Formula.of("amount-allowance-error", FigureAmounts::allowance, ALLOWANCE_GIRTH_ERROR)),
  DRAFT_DIFFERENCE(
      "draft difference",
      Formula.trying("amount-draft-difference", DraftFormulas::amount, DISTANCE_FROM_THE_DRAFT)),
  EDGE_ELASTIC_LONGER(
      "edge elastic longer", Formula.trying("amount-edge-elastic", FigureAmounts::elasticLonger)),
  EDGE_ELASTIC_SHORTER(
      "edge elastic shorter", Formula.trying("amount-edge-elastic", FigureAmounts::elasticShorter)),
  EDGE_GROWN("edge grown", Formula.trying("amount-edge-grown", FigureAmounts::edgeGrown)),
  ARMHOLE_RISE("armhole rise", Spread.WHOLE),
  SIDE_DIFFERENCE("side difference", Spread.WHOLE),
  /** How much more one side takes; a sign told of both sides does not say which differs. */
  ONE_SIDE(
      "one side",
      Spread.WHOLE,
      null,
      Formula.trying("amount-one-side", CupAmounts::sidesDiffer, GivenNumber.BOTH_SIDES)),
  /** The adjustment has no amount. */
  NONE("none", Spread.WHOLE);

  private static final Map<String, AmountMethod> BY_ID =
      Arrays.stream(values()).collect(Collectors.toMap(AmountMethod::id, one -> one));

  /** Whether a change of girth is split over its edges, or made whole at each. */
  private enum Spread {
    OVER_EDGES,
    WHOLE
  }

  private final String id;
  private final Spread spread;
  private final Function<FittingNumbers, String> measureFirst;
  private final List<Formula> formulas;

  AmountMethod(String id, Formula formula) {
    this(id, Spread.WHOLE, null, formula);
  }

  AmountMethod(String id, Spread spread) {
    this(id, spread, null);
  }

  /**
   * @param measureFirst key of the sentence on what to measure where no formula has its inputs, or
   *     null for nothing; as a whole null where only a sign tells what to measure
   * @param formulas ways to work it out; where several have their inputs, the smaller error counts
   */
  AmountMethod(
      String id,
      Spread spread,
      Function<FittingNumbers, String> measureFirst,
      Formula... formulas) {
    this.id = id;
    this.spread = spread;
    this.measureFirst = measureFirst;
    this.formulas = List.of(formulas);
  }

  /**
   * The method that the catalog or an amount names.
   *
   * @throws IllegalArgumentException if there is none; the check of a book finds it before
   */
  static AmountMethod of(String id) {
    AmountMethod method = BY_ID.get(id);
    if (method == null) {
      throw new IllegalArgumentException("There is no amount method called " + id + ".");
    }
    return method;
  }

  /** The name in the catalog. */
  String id() {
    return id;
  }

  /** Whether the amount is a change of girth, split over all the edges it is made at. */
  boolean splits() {
    return spread == Spread.OVER_EDGES;
  }

  /**
   * Whether a sign seen at a place may be its amount.
   *
   * @param place null when not said
   */
  boolean isMeasuredAt(String place) {
    return true;
  }

  /** Whether it brings an edge's elastic to the length planned for it. */
  boolean isToThePlan() {
    return this == EDGE_ELASTIC_LONGER || this == EDGE_ELASTIC_SHORTER;
  }

  /** Whether only what is told of one side is its amount. */
  boolean isOfOneSide() {
    return this == ONE_SIDE;
  }

  /** All formulas, whether or not a fitting has their inputs. */
  List<Formula> formulas() {
    return formulas;
  }

  /** Those that have their inputs; several measure the same amount in several ways. */
  List<Formula> formulas(FittingNumbers numbers) {
    return formulas.stream().filter(formula -> formula.isReady(numbers)).toList();
  }

  /** How to compute what hangs loose; empty where only a measured sign tells. */
  Optional<Formula> slack() {
    return Optional.empty();
  }

  /** Key of the sentence on what to measure first; empty where only a sign would tell. */
  Optional<String> measureFirst(FittingNumbers numbers) {
    return Optional.ofNullable(measureFirst).map(first -> first.apply(numbers));
  }

  private static String measureTheBand(FittingNumbers numbers) {
    return numbers.fitting().body().underbust() == null
        ? "measure-first-body"
        : numbers.fitting().garment().underband() == null
            ? "measure-first-underband"
            : "measure-first-pull-off";
  }

  private static String measureTheGirths(FittingNumbers numbers) {
    BodyMeasurements body = numbers.fitting().body();
    return body.bust() == null || body.underbust() == null ? "measure-first-body" : null;
  }
}
