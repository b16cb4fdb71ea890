package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.Estimate;
import easewright.cloth.StretchTest;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.facts.Figure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Derives the numbers about the cloths: each layer's own, and the margins of what is worn together.
 */
final class ClothFigures {
  private final Fitting fitting;
  private final RuleBookSource source;
  private final Shown shown;
  private final List<Figure> figures = new ArrayList<>();

  private ClothFigures(Fitting fitting, RuleBookSource source, Shown shown) {
    this.fitting = fitting;
    this.source = source;
    this.shown = shown;
  }

  static List<Figure> of(Fitting fitting, Draft draft, RuleBookSource source, Shown shown) {
    ClothFigures figures = new ClothFigures(fitting, source, shown);
    for (Map.Entry<String, ClothReport> cloth : fitting.cloths().entrySet()) {
      if (cloth.getValue().test() != null) {
        figures.layer(cloth.getKey(), "around", cloth.getValue().test().around());
        figures.layer(cloth.getKey(), "along", cloth.getValue().test().along());
        figures.direction(cloth.getKey(), cloth.getValue());
      }
    }
    draft.need("main").ifPresent(figures::margins);
    return figures.figures;
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
    add(role + "-stretch-" + direction, "figure-stretch", test.stretch(), readings);
    if (direction.equals("around")) {
      test.recovery().ifPresent(r -> add(role + "-recovery", "figure-recovery", r, readings));
      test.growth().ifPresent(g -> add(role + "-growth", "figure-growth", g, readings));
    }
  }

  /** Which way the main cloth stretches most decides which way it should lie. */
  private void direction(String role, ClothReport cloth) {
    StretchTest along = cloth.test().along();
    if (role.equals("main") && along != null) {
      Estimate around = cloth.test().around().stretch();
      Estimate up = along.stretch();
      add(
          "stretch-direction-margin",
          "figure-stretch-direction-margin",
          Estimate.of(around.value() - up.value(), around.sd(), up.sd()),
          "around",
          shown.percent(around.value()),
          "along",
          shown.percent(up.value()));
    }
  }

  private void margins(ClothNeed need) {
    least("-stretch-around")
        .ifPresent(has -> margin("stretch-margin-around", has, need.stretchAround()));
    least("-stretch-along")
        .ifPresent(has -> margin("stretch-margin-along", has, need.stretchAlong()));
    if (need.recovery() != null) {
      least("-recovery")
          .ifPresent(
              has ->
                  add(
                      "recovery-margin",
                      "figure-recovery-margin",
                      has.minus(need.recovery()),
                      "has",
                      shown.percent(has.value()),
                      "need",
                      shown.percent(need.recovery())));
    }
    least("-stretch-around")
        .ifPresent(
            has -> {
              Estimate factor = need.use().widthFactor(need.stretchAround(), has);
              figures.add(
                  figure(
                      source,
                      shown,
                      "width-factor",
                      "figure-width-factor",
                      factor.value(),
                      factor.sd(),
                      "factor",
                      "use",
                      shown.percent(need.use().fraction()),
                      "drafted",
                      shown.percent(need.stretchAround()),
                      "has",
                      shown.percent(has.value())));
            });
  }

  private void margin(String id, Estimate has, double need) {
    add(
        id,
        "figure-stretch-margin",
        has.minus(need),
        "has",
        shown.percent(has.value()),
        "need",
        shown.percent(need));
  }

  /** Layers worn together do no better than the least of them. */
  private Optional<Estimate> least(String ending) {
    return figures.stream()
        .filter(f -> f.id().endsWith(ending))
        .map(f -> new Estimate(f.value(), f.sd()))
        .min((a, b) -> Double.compare(a.value(), b.value()));
  }

  private void add(String id, String sentence, Estimate estimate, Object... blanks) {
    figures.add(
        figure(source, shown, id, sentence, estimate.value(), estimate.sd(), "fraction", blanks));
  }

  /** A figure with its formula in words, the numbers and the result put in. */
  static Figure figure(
      RuleBookSource source,
      Shown shown,
      String id,
      String sentence,
      double value,
      double sd,
      String unit,
      Object... blanks) {
    Object[] all = Arrays.copyOf(blanks, blanks.length + 2);
    all[blanks.length] = "value";
    all[blanks.length + 1] = shown.value(value, unit);
    return new Figure(id, value, sd, unit, source.wording().say(sentence, all));
  }
}
