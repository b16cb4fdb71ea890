package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.GarmentEdge;
import easewright.wording.Blanks;
import java.util.Optional;

/** Amounts that are a figure, or a share of one. */
final class FigureAmounts {
  private FigureAmounts() {}

  /** Across, each side carries half of the difference between the two bust points. */
  static Worked bustPointIn(FittingNumbers n) {
    return part(n, DerivedFigure.BUST_POINT_WIDTH_EXCESS, -0.5);
  }

  static Worked bustPointOut(FittingNumbers n) {
    return part(n, DerivedFigure.BUST_POINT_WIDTH_EXCESS, 0.5);
  }

  static Worked bustPointUp(FittingNumbers n) {
    return part(n, DerivedFigure.APEX_DROP, -1);
  }

  static Worked bustPointDown(FittingNumbers n) {
    return part(n, DerivedFigure.APEX_DROP, 1);
  }

  private static Worked part(FittingNumbers n, DerivedFigure figure, double share) {
    return new Worked(times(n.figure(figure), share), Blanks.of("working", n.working(figure)));
  }

  static Worked frontLonger(FittingNumbers n) {
    return frontLength(n, 1);
  }

  static Worked frontShorter(FittingNumbers n) {
    return frontLength(n, -1);
  }

  private static Worked frontLength(FittingNumbers n, int way) {
    Estimate change = times(n.figure(DerivedFigure.FRONT_LENGTH_SHORTFALL), way);
    return new Worked(change, Blanks.of("shortfall", n.shown().length(change.value())));
  }

  static Worked stretchFactor(FittingNumbers n) {
    Estimate factor = n.figure(DerivedFigure.WIDTH_FACTOR);
    double girth = n.draft().bust().orElseThrow().value();
    return new Worked(
        new Estimate(girth * (factor.value() - 1), girth * factor.sd()),
        Blanks.of("factor", n.shown().value(factor.value(), "factor"))
            .and("girth", n.shown().length(girth)));
  }

  static Worked allowance(FittingNumbers n) {
    Estimate error = n.figure(DerivedFigure.ALLOWANCE_GIRTH_ERROR);
    int seams = MakingFormulas.seams(n);
    double whole = Math.abs(error.value());
    return new Worked(
        new Estimate(whole, error.sd()),
        Blanks.of("seams", seams).and("difference", n.shown().length(whole / (2.0 * seams))));
  }

  /** How much longer the elastic that is most short must be cut; empty where none is short. */
  static Optional<Worked> elasticLonger(FittingNumbers n) {
    return off(n, AmountMethod.EDGE_ELASTIC_LONGER, -1);
  }

  /** How much shorter the elastic that is most long must be cut; empty where none is long. */
  static Optional<Worked> elasticShorter(FittingNumbers n) {
    return off(n, AmountMethod.EDGE_ELASTIC_SHORTER, 1);
  }

  /** How much longer than planned the band's elastic was cut; empty within the error of cutting. */
  static Optional<Worked> bandElasticShorter(FittingNumbers n) {
    return EdgeFigure.ELASTIC_OFF_ITS_PLAN
        .of(GarmentEdge.UNDERBAND)
        .off(n)
        .filter(
            off -> off.result().value() > n.parameter("measures-contradict") * off.result().sd());
  }

  /** How much longer than drafted the edge is that grew most; empty where none grew. */
  static Optional<Worked> edgeGrown(FittingNumbers n) {
    return off(n, AmountMethod.EDGE_GROWN, 1);
  }

  private static Optional<Worked> off(FittingNumbers n, AmountMethod method, int way) {
    return edge(method, n)
        .flatMap(one -> one.off(n))
        .map(off -> new Worked(times(off.result(), way), off.blanks()));
  }

  /** The edge that a method measures, where one is off by more than is usual. */
  static Optional<EdgeFigure.OfEdge> edge(AmountMethod method, FittingNumbers n) {
    return switch (method) {
      case EDGE_ELASTIC_LONGER ->
          EdgeFigure.ELASTIC_OFF_ITS_PLAN.furthest(n, n.parameter("elastic-cut-short"));
      case EDGE_ELASTIC_SHORTER ->
          EdgeFigure.ELASTIC_OFF_ITS_PLAN.furthest(n, n.parameter("elastic-cut-long"));
      case EDGE_GROWN -> EdgeFigure.OFF_ITS_DRAFT.furthest(n, n.parameter("edge-grown"));
      default -> Optional.empty();
    };
  }

  private static Estimate times(Estimate figure, double share) {
    return new Estimate(share * figure.value(), Math.abs(share) * figure.sd());
  }
}
