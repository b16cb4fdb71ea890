package easewright.check;

import easewright.check.ClothAnswer.DirectionNote;
import easewright.check.ClothAnswer.LayerNote;
import easewright.check.ClothAnswer.MarginNote;
import easewright.cloth.ClothNeed;
import easewright.cloth.ClothTest;
import easewright.cloth.ClothVerdict;
import easewright.cloth.Estimate;
import easewright.cloth.StretchClass;
import easewright.cloth.StretchTest;
import easewright.diagnosis.Answer.ClothFigure;
import easewright.diagnosis.UnitFormatter;
import easewright.fitting.ClothReport;
import easewright.rulebook.RuleBookSource;
import easewright.rulebook.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;

/** Compares one cloth with the pattern's requirements for its layer. */
final class LayerCheck {
  private final RuleBookSource source;
  private final Wording wording;
  private final UnitFormatter shown;

  LayerCheck(RuleBookSource source, UnitFormatter shown) {
    this.source = source;
    this.wording = source.wording();
    this.shown = shown;
  }

  /**
   * The result for a layer.
   *
   * @param need null if the sheet has no requirement for this layer
   */
  LayerNote of(String role, ClothReport cloth, ClothNeed need) {
    ClothTest test = cloth.test();
    Double gsm = cloth.weight() == null ? null : cloth.weight().gramsPerM2();
    List<MarginNote> margins = need == null ? List.of() : margins(test, need);
    Optional<Double> weight =
        need == null ? Optional.empty() : ClothVerdict.of(test, need, gsm).weightGsm();
    String verdict = need == null ? "no-need-stated" : verdict(margins, weight);
    DirectionNote direction = direction(test, need, verdict);
    StretchTest laidAround = direction.turned() == null ? test.around() : test.along();
    Estimate factor =
        need == null ? null : need.use().widthFactor(need.stretchAround(), laidAround.stretch());
    return new LayerNote(
        role,
        name(test.stretchClass()),
        name(StretchClass.of(test.around().stretch().value())),
        wording.say("verdict-" + verdict),
        tests(test),
        margins,
        weight.orElse(null),
        direction,
        need == null ? List.of() : untested(test, need, gsm),
        factor == null ? null : factor.value(),
        factor == null ? null : factor.sd());
  }

  private List<String> untested(ClothTest test, ClothNeed need, Double gsm) {
    List<String> untested = new ArrayList<>();
    if (test.along() == null) {
      untested.add(wording.say("untested-along"));
    }
    if (need.recovery() != null && test.recovery().isEmpty()) {
      untested.add(wording.say("untested-recovery"));
    }
    if (gsm == null && (need.lightestGsm() != null || need.heaviestGsm() != null)) {
      untested.add(wording.say("untested-weight"));
    }
    return untested;
  }

  private static String name(StretchClass of) {
    return of.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private List<ClothFigure> tests(ClothTest test) {
    List<ClothFigure> tests = new ArrayList<>(tests("around", test.around()));
    if (test.along() != null) {
      tests.addAll(tests("along", test.along()));
    }
    return tests;
  }

  private List<ClothFigure> tests(String direction, StretchTest test) {
    List<ClothFigure> tests = new ArrayList<>();
    tests.add(figure("stretch", direction, test.stretch()));
    test.growth().ifPresent(growth -> tests.add(figure("growth", direction, growth)));
    test.recovery().ifPresent(back -> tests.add(figure("recovery", direction, back)));
    return tests;
  }

  private ClothFigure figure(String property, String direction, Estimate estimate) {
    return new ClothFigure(
        property, direction, estimate.value(), estimate.sd(), shown.percent(estimate.value()));
  }

  private List<MarginNote> margins(ClothTest test, ClothNeed need) {
    List<MarginNote> margins = new ArrayList<>();
    margins.add(margin("stretch", "around", need.stretchAround(), test.around().stretch()));
    if (test.along() != null) {
      margins.add(margin("stretch", "along", need.stretchAlong(), test.along().stretch()));
    }
    if (need.recovery() != null) {
      test.around()
          .recovery()
          .ifPresent(back -> margins.add(margin("recovery", "around", need.recovery(), back)));
      Optional.ofNullable(test.along())
          .flatMap(StretchTest::recovery)
          .ifPresent(back -> margins.add(margin("recovery", "along", need.recovery(), back)));
    }
    return margins;
  }

  private MarginNote margin(String property, String direction, double need, Estimate has) {
    double margin = has.value() - need;
    return new MarginNote(
        property,
        direction,
        need,
        has.value(),
        margin,
        has.sd(),
        met(margin, has.sd()),
        shown.clothNeed(wording, property, direction, has.value(), need));
  }

  private static double met(double margin, double sd) {
    return sd == 0
        ? (margin >= 0 ? 1 : 0)
        : new NormalDistribution(0, sd).cumulativeProbability(margin);
  }

  /**
   * A requirement clearly missed decides; one that is uncertain given the test's error makes it
   * marginal.
   */
  private String verdict(List<MarginNote> margins, Optional<Double> weight) {
    double surely = source.parameter("need-surely-met");
    double worst = margins.stream().mapToDouble(MarginNote::met).min().orElse(1);
    if (worst < 1 - surely) {
      return "does-not-suit";
    }
    return worst < surely || weight.filter(inside -> inside < 0).isPresent() ? "marginal" : "suits";
  }

  private DirectionNote direction(ClothTest test, ClothNeed need, String verdict) {
    if (test.greatest().isEmpty()) {
      return new DirectionNote(null, wording.say("lay-untested"), null);
    }
    String greatest = test.greatest().get().name().toLowerCase(Locale.ROOT);
    String turned = null;
    if (need != null && !verdict.equals("suits")) {
      String other =
          verdict(margins(new ClothTest(test.along(), test.around()), need), Optional.empty());
      boolean better = other.equals("suits") || verdict.equals("does-not-suit");
      turned = better && !other.equals("does-not-suit") ? wording.say("verdict-" + other) : null;
    }
    return new DirectionNote(
        greatest, wording.say(turned == null ? "lay-" + greatest : "lay-turned"), turned);
  }
}
