package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.FigureFormula;
import easewright.measure.Measured;
import easewright.wording.Blanks;
import java.util.Optional;

/** A figure that a family of garments computes from its own measurements. */
final class MeasuredFigure {
  private static final String BODY = "body/";

  private MeasuredFigure() {}

  /** The figure with its error; empty where one of the two was not measured. */
  static Optional<Worked> worked(FigureFormula figure, FittingNumbers n) {
    Optional<Estimate> of = number(figure.of(), n);
    Optional<Estimate> other = number(figure.other(), n);
    if (of.isEmpty() || other.isEmpty()) {
      return Optional.empty();
    }
    Estimate one = of.get();
    Estimate two = other.get();
    Estimate result =
        figure.less() != null
            ? Estimate.of(one.value() - two.value(), one.sd(), two.sd())
            : Estimate.of(
                one.value() / two.value() - 1,
                one.sd() / two.value(),
                two.sd() * one.value() / (two.value() * two.value()));
    return Optional.of(
        new Worked(
            result,
            Blanks.of("of", n.shown().length(one.value()))
                .and("other", n.shown().length(two.value()))));
  }

  /** A measurement, mm: of the body, or of the garment as measured or else as drafted. */
  private static Optional<Estimate> number(String measurement, FittingNumbers n) {
    String name = measurement.substring(measurement.indexOf('/') + 1);
    if (!measurement.startsWith(BODY)) {
      return n.draft().finished(name);
    }
    Measured measured = n.fitting().body().named(name);
    return Optional.ofNullable(measured).map(one -> new Estimate(one.value().mm(), one.sdMm()));
  }
}
