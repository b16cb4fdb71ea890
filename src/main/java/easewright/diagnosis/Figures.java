package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.measure.FigureFormula;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import easewright.size.SizeEstimate;
import easewright.wording.Blanks;
import java.util.LinkedHashMap;
import java.util.function.Function;

/**
 * Derives every number the rules may judge. What cannot be computed for lack of data is simply not
 * there, so that no rule judges it.
 */
final class Figures {
  private final FittingNumbers numbers;

  private Figures(FittingNumbers numbers) {
    this.numbers = numbers;
  }

  /**
   * The numbers of a fitting with every figure derived from them.
   *
   * @param sizes the size estimate, or null without bust and underbust
   */
  static FittingNumbers of(
      Fitting fitting, Draft draft, SizeEstimate sizes, RuleBookSource source) {
    UnitFormatter shown = new UnitFormatter(fitting.units());
    FittingNumbers numbers =
        new FittingNumbers(fitting, draft, sizes, source, shown, new LinkedHashMap<>());
    new Figures(numbers).derive();
    return numbers;
  }

  private void derive() {
    for (String role : numbers.fitting().cloths().keySet()) {
      for (LayerFigure figure : LayerFigure.values()) {
        LayerFigure.OfLayer layer = figure.of(role);
        derive(layer.id(), "fraction", layer.formula());
      }
    }
    for (EdgeFigure.OfEdge figure : EdgeFigure.all()) {
      derive(figure.id(), "fraction", figure.formula());
    }
    for (DerivedFigure figure : DerivedFigure.values()) {
      derive(figure.id(), figure.unit(), figure.formula());
    }
    for (FigureFormula figure : numbers.source().measures().figures()) {
      MeasuredFigure.worked(figure, numbers)
          .ifPresent(
              worked -> put(figure.id(), figure.unit(), worked, said -> said.fill(figure.says())));
    }
    double sd = numbers.parameter("sign-amount-error");
    for (ReportedSign sign : numbers.fitting().signs()) {
      String id = RuleWords.AMOUNT_OF + sign.id();
      if (sign.present() && sign.amount() != null && !numbers.figures().containsKey(id)) {
        boolean perSide = numbers.source().catalog().signs().get(sign.id()).perSide();
        Estimate amount = Measure.estimate(sign, perSide, sd);
        put(id, "mm", new Worked(amount, Blanks.NONE), said("figure-amount"));
      }
    }
  }

  private void derive(String id, String unit, Formula formula) {
    formula.worked(numbers).ifPresent(worked -> put(id, unit, worked, said(formula.wording())));
  }

  private Function<Blanks, String> said(String key) {
    return blanks -> numbers.source().wording().say(key, blanks);
  }

  private void put(String id, String unit, Worked worked, Function<Blanks, String> says) {
    double value = worked.result().value();
    String working = says.apply(worked.blanks().and("value", numbers.shown().value(value, unit)));
    numbers.figures().put(id, new Figure(id, value, worked.result().sd(), unit, working));
  }
}
