package easewright.diagnosis;

import easewright.fitting.Fitting;
import easewright.fitting.GivenAmount;
import easewright.fitting.Trial;
import easewright.measure.Length;
import easewright.rulebook.Catalog;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the trials of one change tell together when it was tried in steps. The step that sat right
 * counts, however many were too little or too much. Where none did, and one helped while a larger
 * one went too far, the amount lies between them. Else what helped counts, or the last word.
 */
final class TrialSteps {
  private static final String BETTER = "better";
  private static final String WORSE = "worse";

  private final String adjustment;
  private final List<Trial> steps;
  private final boolean perSide;

  private TrialSteps(String adjustment, List<Trial> steps, Catalog catalog) {
    this.adjustment = adjustment;
    this.steps = steps;
    this.perSide = catalog.adjustments().get(adjustment).perSide();
  }

  /** One trial for each change that was tried, in the order they were first tried. */
  static List<Trial> together(Fitting fitting, Catalog catalog) {
    Map<String, List<Trial>> byChange =
        fitting.trials().stream()
            .collect(
                Collectors.groupingBy(Trial::adjustment, LinkedHashMap::new, Collectors.toList()));
    return byChange.entrySet().stream()
        .map(one -> new TrialSteps(one.getKey(), one.getValue(), catalog).together())
        .toList();
  }

  /** Ids of the changes that sat right, as the last word on them. */
  static Set<String> right(Fitting fitting, Catalog catalog) {
    return together(fitting, catalog).stream()
        .filter(Trial::isRight)
        .map(Trial::adjustment)
        .collect(Collectors.toSet());
  }

  /**
   * What helped and what was too much, as a range of one change; empty where a step sat right or
   * none went too far.
   */
  static Optional<GivenAmount> between(String adjustment, Fitting fitting, Catalog catalog) {
    List<Trial> steps =
        fitting.trials().stream().filter(one -> one.adjustment().equals(adjustment)).toList();
    if (steps.isEmpty()) {
      return Optional.empty();
    }
    TrialSteps told = new TrialSteps(adjustment, steps, catalog);
    return told.right().isPresent() ? Optional.empty() : told.between();
  }

  private Trial together() {
    Trial last = steps.get(steps.size() - 1);
    return right()
        .or(() -> between().map(range -> new Trial(adjustment, range, last.how(), BETTER)))
        .or(this::enough)
        .orElse(last);
  }

  /** The last step that sat right, unless as much or less of it was found wrong afterwards. */
  private Optional<Trial> right() {
    Trial right = null;
    for (Trial one : steps) {
      if (one.isRight()) {
        right = one;
      } else if (right != null && WORSE.equals(one.outcome()) && !isMore(one, right)) {
        right = null;
      }
    }
    return Optional.ofNullable(right);
  }

  /** Of a change that helped at first, what more of it did not spoil. */
  private Optional<Trial> enough() {
    return steps.stream().anyMatch(one -> WORSE.equals(one.outcome()))
        ? Optional.empty()
        : steps.stream().filter(one -> BETTER.equals(one.outcome())).reduce((one, next) -> next);
  }

  private Optional<GivenAmount> between() {
    Optional<Trial> helped = with(BETTER).max(Comparator.comparingDouble(one -> counted(one).mm()));
    return helped.flatMap(
        low ->
            with(WORSE)
                .filter(one -> isMore(one, low))
                .min(Comparator.comparingDouble(one -> counted(one).mm()))
                .map(
                    high ->
                        new GivenAmount(
                            Length.ofMm(counted(low).mm()), Length.ofMm(counted(high).mm()), 1)));
  }

  private Stream<Trial> with(String outcome) {
    return steps.stream().filter(one -> outcome.equals(one.outcome()) && one.amount() != null);
  }

  private boolean isMore(Trial one, Trial other) {
    return one.amount() != null
        && other.amount() != null
        && counted(one).mm() > counted(other).mm();
  }

  private GivenAmount counted(Trial one) {
    return perSide ? one.amount().onOneSide() : one.amount();
  }
}
