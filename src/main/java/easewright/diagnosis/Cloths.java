package easewright.diagnosis;

import easewright.cloth.ClothNeed;
import easewright.cloth.ClothTest;
import easewright.cloth.Estimate;
import easewright.cloth.StretchClass;
import easewright.cloth.StretchTest;
import easewright.diagnosis.Answer.ClothFigure;
import easewright.diagnosis.Answer.ClothResult;
import easewright.fitting.Fitting;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Sets each cloth's tests beside what the pattern asks of it. */
final class Cloths {
  private final Draft draft;
  private final Wording wording;
  private final UnitFormatter shown;

  Cloths(Draft draft, Knowledge knowledge, UnitFormatter shown) {
    this.draft = draft;
    this.wording = knowledge.source().wording();
    this.shown = shown;
  }

  List<ClothResult> results(Fitting fitting) {
    return fitting.cloths().entrySet().stream()
        .filter(cloth -> cloth.getValue().test() != null)
        .map(cloth -> result(cloth.getKey(), cloth.getValue().test()))
        .toList();
  }

  private ClothResult result(String role, ClothTest test) {
    List<ClothFigure> tests = new ArrayList<>(tests("around", test.around()));
    tests.addAll(tests("along", test.along()));
    List<Answer.ClothNeed> needs =
        draft.need(role).map(need -> needs(need, test)).orElse(List.of());
    return new ClothResult(
        role,
        StretchClass.of(test.around().stretch().value())
            .name()
            .toLowerCase(Locale.ROOT)
            .replace('_', ' '),
        wording.say("verdict-" + verdict(needs, tests)),
        tests,
        needs);
  }

  private List<ClothFigure> tests(String direction, StretchTest test) {
    List<ClothFigure> tests = new ArrayList<>();
    if (test != null) {
      tests.add(figure("stretch", direction, test.stretch()));
      test.growth().ifPresent(growth -> tests.add(figure("growth", direction, growth)));
      test.recovery().ifPresent(back -> tests.add(figure("recovery", direction, back)));
    }
    return tests;
  }

  private ClothFigure figure(String property, String direction, Estimate estimate) {
    return new ClothFigure(
        property,
        direction,
        Explaining.rounded(estimate.value()),
        Explaining.rounded(estimate.sd()),
        shown.percent(estimate.value()));
  }

  private List<Answer.ClothNeed> needs(ClothNeed need, ClothTest test) {
    List<Answer.ClothNeed> needs = new ArrayList<>();
    needs.add(need("stretch", "around", need.stretchAround(), test.around().stretch()));
    if (need.stretchAlong() != null && test.along() != null) {
      needs.add(need("stretch", "along", need.stretchAlong(), test.along().stretch()));
    }
    if (need.recovery() != null) {
      test.around()
          .recovery()
          .ifPresent(back -> needs.add(need("recovery", "around", need.recovery(), back)));
    }
    return needs;
  }

  private Answer.ClothNeed need(String property, String direction, double need, Estimate has) {
    return new Answer.ClothNeed(
        property,
        direction,
        need,
        Explaining.rounded(has.value()),
        Explaining.rounded(has.value() - need),
        shown.clothNeed(wording, property, direction, has.value(), need));
  }

  /** Marginal where a margin lies within the error of its test, either way. */
  private static String verdict(List<Answer.ClothNeed> needs, List<ClothFigure> tests) {
    String verdict = needs.isEmpty() ? "no-need-stated" : "suits";
    for (Answer.ClothNeed need : needs) {
      double error =
          tests.stream()
              .filter(t -> t.property().equals(need.property()))
              .filter(t -> t.direction().equals(need.direction()))
              .mapToDouble(ClothFigure::plusMinus)
              .findFirst()
              .orElse(0);
      if (need.margin() < -error) {
        return "does-not-suit";
      }
      if (need.margin() < error) {
        verdict = "marginal";
      }
    }
    return verdict;
  }
}
