package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.Estimate;
import easewright.cloth.StretchTest;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Derives the numbers about the cloths: each layer's own, and the margins of what is worn together.
 */
final class ClothFigures {
  private final Fitting fitting;
  private final Draft draft;
  private final FigureWriter figures;
  private final UnitFormatter shown;

  ClothFigures(Fitting fitting, Draft draft, FigureWriter figures, UnitFormatter shown) {
    this.fitting = fitting;
    this.draft = draft;
    this.figures = figures;
    this.shown = shown;
  }

  void derive() {
    for (Map.Entry<String, ClothReport> cloth : fitting.cloths().entrySet()) {
      if (cloth.getValue().test() != null) {
        layer(cloth.getKey(), "around", cloth.getValue().test().around());
        layer(cloth.getKey(), "along", cloth.getValue().test().along());
        direction(cloth.getKey(), cloth.getValue());
      }
    }
    margins();
  }

  private void layer(String role, String direction, StretchTest test) {
    if (test == null) {
      return;
    }
    Object[] readings = {
      "marked", shown.length(test.markedMm()),
      "stretched", shown.length(test.stretchedMm()),
      "relaxed", test.relaxedMm() == null ? "" : shown.length(test.relaxedMm())
    };
    figures.fraction(role + "-stretch-" + direction, "figure-stretch", test.stretch(), readings);
    if (direction.equals("around")) {
      test.recovery()
          .ifPresent(r -> figures.fraction(role + "-recovery", "figure-recovery", r, readings));
      test.growth()
          .ifPresent(g -> figures.fraction(role + "-growth", "figure-growth", g, readings));
    }
  }

  /** Which way the main cloth stretches most decides which way it should lie. */
  private void direction(String role, ClothReport cloth) {
    StretchTest along = cloth.test().along();
    if (role.equals("main") && along != null) {
      Estimate around = cloth.test().around().stretch();
      Estimate up = along.stretch();
      figures.fraction(
          "stretch-direction-margin",
          "figure-stretch-direction-margin",
          Estimate.of(around.value() - up.value(), around.sd(), up.sd()),
          "around",
          shown.percent(around.value()),
          "along",
          shown.percent(up.value()));
    }
  }

  /** A layer of the garment with what it has and what the pattern asks of it. */
  private record Margin(String role, Estimate has, double need, ClothNeed asked) {
    double value() {
      return has.value() - need;
    }
  }

  /** Each layer is held to its own need; the one that falls shortest speaks for all. */
  private void margins() {
    worst("-stretch-around", ClothNeed::stretchAround)
        .ifPresent(
            worst -> {
              margin("stretch-margin-around", "figure-stretch-margin", worst);
              widthFactor(worst);
            });
    worst("-stretch-along", ClothNeed::stretchAlong)
        .ifPresent(worst -> margin("stretch-margin-along", "figure-stretch-margin", worst));
    worst("-recovery", ClothNeed::recovery)
        .ifPresent(worst -> margin("recovery-margin", "figure-recovery-margin", worst));
  }

  private Optional<Margin> worst(String ending, Function<ClothNeed, Double> asks) {
    return figures.figures().stream()
        .filter(f -> f.id().endsWith(ending))
        .flatMap(
            f -> {
              String role = f.id().substring(0, f.id().length() - ending.length());
              return draft.need(role).stream()
                  .filter(need -> asks.apply(need) != null)
                  .map(
                      need ->
                          new Margin(
                              role, new Estimate(f.value(), f.sd()), asks.apply(need), need));
            })
        .min(Comparator.comparingDouble(Margin::value));
  }

  private void margin(String id, String sentence, Margin worst) {
    figures.fraction(
        id,
        sentence,
        worst.has().minus(worst.need()),
        "role",
        worst.role(),
        "has",
        shown.percent(worst.has().value()),
        "need",
        shown.percent(worst.need()));
  }

  private void widthFactor(Margin worst) {
    Estimate factor = worst.asked().use().widthFactor(worst.need(), worst.has());
    figures.add(
        "width-factor",
        factor.value(),
        factor.sd(),
        "factor",
        "use",
        shown.percent(worst.asked().use().fraction()),
        "drafted",
        shown.percent(worst.need()),
        "has",
        shown.percent(worst.has().value()));
  }
}
