package easewright.diagnosis.inference;

import easewright.diagnosis.inference.WhyNot.Change;
import easewright.diagnosis.inference.WhyNot.Kind;
import easewright.diagnosis.inference.WhyNot.Turn;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/** Looks for the changes to what is known that put a cause first. */
record TurnSearch(Posterior posterior, String cause, String first, int atMost) {
  /**
   * Changes tried in pairs, the most helpful alone; all pairs of a long request would take long.
   */
  private static final int MOST_PAIRED = 12;

  /** Probabilities nearer than this part of themselves are equal. */
  private static final double TIE = 1e-9;

  /**
   * A change and what it does to the observations.
   *
   * @param gone the report it takes away, or null
   * @param come the report it brings, or null
   */
  record Step(Change change, Observation gone, Observation come) {}

  /** A change that helps the cause, and how far: its probability per that of the first. */
  private record Helpful(Step step, double lead) {}

  List<Step> answers(Collection<String> askable, BiFunction<String, Boolean, Observation> as) {
    var known = posterior.observations().stream().map(Observation::sign).toList();
    var steps = new ArrayList<Step>();
    for (String sign : askable) {
      if (relevant(sign) && !known.contains(sign)) {
        for (boolean present : new boolean[] {true, false}) {
          Kind kind = present ? Kind.PRESENT : Kind.ABSENT;
          steps.add(new Step(new Change(sign, kind), null, as.apply(sign, present)));
        }
      }
    }
    return steps;
  }

  List<Step> reports(BiFunction<String, Boolean, Observation> as) {
    var steps = new ArrayList<Step>();
    for (Observation seen : posterior.observations()) {
      if (relevant(seen.sign())) {
        steps.add(new Step(new Change(seen.sign(), Kind.REMOVED), seen, null));
        Observation reversed = as.apply(seen.sign(), !seen.present());
        steps.add(new Step(new Change(seen.sign(), Kind.REVERSED), seen, reversed));
      }
    }
    return steps;
  }

  List<Turn> turns(List<Step> steps) {
    var alone = new ArrayList<Turn>();
    var helpful = new ArrayList<Helpful>();
    double lead = lead(posterior);
    for (Step step : steps) {
      after(List.of(step))
          .ifPresent(
              changed -> {
                if (lead(changed) > lead) {
                  helpful.add(new Helpful(step, lead(changed)));
                }
                collect(List.of(step), changed, alone);
              });
    }
    return best(alone.isEmpty() ? pairs(most(helpful)) : alone);
  }

  private static List<Step> most(List<Helpful> helpful) {
    return helpful.stream()
        .sorted(Comparator.comparingDouble(one -> -one.lead()))
        .limit(MOST_PAIRED)
        .map(Helpful::step)
        .toList();
  }

  private List<Turn> pairs(List<Step> helpful) {
    var turns = new ArrayList<Turn>();
    for (int a = 0; a < helpful.size(); a++) {
      for (int b = a + 1; b < helpful.size(); b++) {
        if (!helpful.get(a).change().sign().equals(helpful.get(b).change().sign())) {
          var both = List.of(helpful.get(a), helpful.get(b));
          after(both).ifPresent(changed -> collect(both, changed, turns));
        }
      }
    }
    return turns;
  }

  private void collect(List<Step> steps, Posterior changed, List<Turn> turns) {
    if (leads(changed)) {
      turns.add(new Turn(steps.stream().map(Step::change).toList(), changed.probability(cause)));
    }
  }

  /** Clearly: equals are told apart by rounding only, and no turn. */
  private boolean leads(Posterior changed) {
    double most = changed.probability(cause) * (1 - TIE);
    return changed.first().equals(cause)
        && changed.causes(2).stream()
            .allMatch(other -> other.cause().equals(cause) || other.probability() < most);
  }

  private List<Turn> best(List<Turn> turns) {
    return turns.stream()
        .sorted(Comparator.comparingDouble(turn -> -turn.probability()))
        .limit(atMost)
        .toList();
  }

  private double lead(Posterior of) {
    return of.probability(cause) / of.probability(first);
  }

  private boolean relevant(String sign) {
    Network network = posterior.network();
    return network.strength(cause, sign) > 0 || network.strength(first, sign) > 0;
  }

  /** The posterior after the steps; empty if full trust makes them contradict each other. */
  private Optional<Posterior> after(List<Step> steps) {
    List<Observation> gone = present(steps, Step::gone);
    List<Observation> come = present(steps, Step::come);
    try {
      Posterior left = posterior;
      for (Observation seen : gone) {
        left = left.without(seen);
      }
      return Optional.of(come.isEmpty() ? left : left.and(come));
    } catch (ImpossibleObservations impossible) {
      return Optional.empty();
    }
  }

  private static List<Observation> present(List<Step> steps, Function<Step, Observation> which) {
    return steps.stream().map(which).filter(Objects::nonNull).toList();
  }
}
