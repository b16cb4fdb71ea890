package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.Fitting;
import easewright.fitting.ReportedSign;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import easewright.size.SizeEstimate;
import easewright.wording.Blanks;
import java.util.LinkedHashMap;

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
    double sd = numbers.parameter("sign-amount-error");
    for (ReportedSign sign : numbers.fitting().signs()) {
      String id = RuleWords.AMOUNT_OF + sign.id();
      if (sign.present() && sign.amount() != null && !numbers.figures().containsKey(id)) {
        boolean perSide = numbers.source().catalog().signs().get(sign.id()).perSide();
        Estimate amount = Measure.estimate(sign, perSide, sd);
        put(id, "mm", "figure-amount", new Worked(amount, Blanks.NONE));
      }
    }
  }

  private void derive(String id, String unit, Formula formula) {
    formula.worked(numbers).ifPresent(worked -> put(id, unit, formula.wording(), worked));
  }

  private void put(String id, String unit, String wording, Worked worked) {
    double value = worked.result().value();
    Blanks blanks = worked.blanks().and("value", numbers.shown().value(value, unit));
    String working = numbers.source().wording().say(wording, blanks);
    numbers.figures().put(id, new Figure(id, value, worked.result().sd(), unit, working));
  }
}
