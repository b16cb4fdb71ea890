package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.wording.Blanks;

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

  private static Estimate times(Estimate figure, double share) {
    return new Estimate(share * figure.value(), Math.abs(share) * figure.sd());
  }
}
