package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.fitting.Fitting;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import easewright.size.SizeEstimate;
import java.util.Map;

/**
 * What the formulas of one fitting work with.
 *
 * @param sizes the size estimate, or null without bust and underbust
 * @param figures the figures derived so far, by id
 */
record FittingNumbers(
    Fitting fitting,
    Draft draft,
    SizeEstimate sizes,
    RuleBookSource source,
    UnitFormatter shown,
    Map<String, Figure> figures) {

  /** A figure derived before, which a formula names among its inputs. */
  Estimate figure(DerivedFigure which) {
    return figure(which.id());
  }

  /** A figure derived before, by id. */
  Estimate figure(String id) {
    Figure figure = figures.get(id);
    return new Estimate(figure.value(), figure.sd());
  }

  /** How a figure was worked out, in words. */
  String working(DerivedFigure which) {
    return figures.get(which.id()).formula();
  }

  double parameter(String id) {
    return source.parameter(id);
  }
}
