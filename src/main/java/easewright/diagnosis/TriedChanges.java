package easewright.diagnosis;

import easewright.fitting.EarlierAdjustment;
import easewright.fitting.EarlierSize;
import easewright.fitting.Fitting;
import easewright.fitting.SizeSteps;
import easewright.fitting.Trial;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that was tried, as changes with what they did. An earlier toile in another size counts
 * as the change of size from the present toile to that one, where sheet or label show which it
 * would be. Trials of one change count together, and one that was right as a change that helped.
 */
final class TriedChanges {
  private TriedChanges() {}

  /** In the order of telling: earlier changes, earlier sizes, trials. */
  static List<EarlierAdjustment> of(Fitting fitting, RuleBookSource source) {
    List<EarlierAdjustment> tried = new ArrayList<>(fitting.earlier());
    for (EarlierSize one : fitting.earlierSizes()) {
      change(fitting, one, source)
          .ifPresent(
              id ->
                  tried.add(
                      new EarlierAdjustment(id, null, one.outcome(), one.better(), one.worse())));
    }
    for (Trial one : TrialSteps.together(fitting, source.catalog())) {
      tried.add(one.asChange(one.isRight() ? "better" : one.outcome()));
    }
    return tried;
  }

  /** The earlier sizes that count as changes, by the change. */
  static Map<String, String> sizes(Fitting fitting, RuleBookSource source) {
    Map<String, String> sizes = new HashMap<>();
    for (EarlierSize one : fitting.earlierSizes()) {
      change(fitting, one, source).ifPresent(id -> sizes.put(id, one.size()));
    }
    return sizes;
  }

  private static Optional<String> change(Fitting fitting, EarlierSize one, RuleBookSource source) {
    return new SizeSteps(fitting, source.parameter("least-cup-step"))
        .to(one.size())
        .map(step -> source.catalog().practice().sizing().steps().get(step.id()));
  }
}
