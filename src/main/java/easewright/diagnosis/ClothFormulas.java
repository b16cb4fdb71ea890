package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.wording.Blanks;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Function;

/** Figures about what is worn together: the margins of the layers over what the pattern asks. */
final class ClothFormulas {
  private ClothFormulas() {}

  /** Which way the main cloth stretches most decides which way it should lie. */
  static Worked directionMargin(FittingNumbers n) {
    Estimate around = n.figure(LayerFigure.STRETCH_AROUND.of("main").id());
    Estimate along = n.figure(LayerFigure.STRETCH_ALONG.of("main").id());
    return new Worked(
        Estimate.of(around.value() - along.value(), around.sd(), along.sd()),
        Blanks.of("around", n.shown().percent(around.value()))
            .and("along", n.shown().percent(along.value())));
  }

  static Optional<Worked> stretchMarginAround(FittingNumbers n) {
    return worstAround(n).map(worst -> margin(n, worst));
  }

  static Optional<Worked> stretchMarginAlong(FittingNumbers n) {
    return worst(n, LayerFigure.STRETCH_ALONG, ClothNeed::stretchAlong)
        .map(worst -> margin(n, worst));
  }

  static Optional<Worked> recoveryMargin(FittingNumbers n) {
    return worst(n, LayerFigure.RECOVERY, ClothNeed::recovery).map(worst -> margin(n, worst));
  }

  static Worked widthFactor(FittingNumbers n) {
    Margin worst = worstAround(n).orElseThrow();
    return new Worked(
        worst.asked().use().widthFactor(worst.need(), worst.has()),
        Blanks.of("use", n.shown().percent(worst.asked().use().fraction()))
            .and("drafted", n.shown().percent(worst.need()))
            .and("has", n.shown().percent(worst.has().value())));
  }

  /** A layer of the garment with what it has and what the pattern asks of it. */
  private record Margin(String role, Estimate has, double need, ClothNeed asked) {
    double value() {
      return has.value() - need;
    }
  }

  private static Optional<Margin> worstAround(FittingNumbers n) {
    return worst(n, LayerFigure.STRETCH_AROUND, ClothNeed::stretchAround);
  }

  /** Each layer is held to its own need; the one that falls shortest speaks for all. */
  private static Optional<Margin> worst(
      FittingNumbers n, LayerFigure figure, Function<ClothNeed, Double> asks) {
    return n.fitting().cloths().keySet().stream()
        .map(figure::of)
        .filter(layer -> layer.isGiven(n))
        .flatMap(
            layer ->
                n.draft().need(layer.role()).stream()
                    .filter(need -> asks.apply(need) != null)
                    .map(
                        need ->
                            new Margin(layer.role(), n.figure(layer.id()), asks.apply(need), need)))
        .min(Comparator.comparingDouble(Margin::value));
  }

  private static Worked margin(FittingNumbers n, Margin worst) {
    return new Worked(
        worst.has().minus(worst.need()),
        Blanks.of("role", worst.role())
            .and("has", n.shown().percent(worst.has().value()))
            .and("need", n.shown().percent(worst.need())));
  }
}
