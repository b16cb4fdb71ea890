package easewright.inference;

import easewright.inference.WhyNot.Change;
import easewright.inference.WhyNot.Kind;
import easewright.inference.WhyNot.Turn;
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

  /** Probabilities that differ by less than this part of themselves are equal. */
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
    var hopeful = new ArrayList<Step>();
    double lead = lead(posterior.marginals());
    for (Step step : steps) {
      after(posterior, step)
          .ifPresent(
              changed -> {
                if (lead(changed) > lead * (1 - TIE)) {
                  hopeful.add(step);
                }
                collect(List.of(step), changed, alone);
              });
    }
    return best(alone.isEmpty() ? pairs(most(hopeful, lead)) : alone);
  }

  private List<Step> most(List<Step> hopeful, double lead) {
    var helpful = new ArrayList<Helpful>();
    for (Step step : hopeful) {
      weighedAnew(List.of(step))
          .map(changed -> new Helpful(step, lead(changed.marginals())))
          .filter(one -> one.lead() > lead)
          .ifPresent(helpful::add);
    }
    return helpful.stream()
        .sorted(Comparator.comparingDouble(one -> -one.lead()))
        .limit(MOST_PAIRED)
        .map(Helpful::step)
        .toList();
  }

  private List<Turn> pairs(List<Step> helpful) {
    var turns = new ArrayList<Turn>();
    for (int a = 0; a < helpful.size(); a++) {
      Step one = helpful.get(a);
      List<Step> others =
          helpful.subList(a + 1, helpful.size()).stream()
              .filter(other -> !other.change().sign().equals(one.change().sign()))
              .toList();
      weighedAnew(List.of(one))
          .ifPresent(
              half ->
                  others.forEach(
                      other ->
                          after(half, other)
                              .ifPresent(changed -> collect(List.of(one, other), changed, turns))));
    }
    return turns;
  }

  private void collect(List<Step> steps, double[] changed, List<Turn> turns) {
    if (leads(changed)) {
      // Rounding would order equal turns, so the probabilities of all are summed in the same way.
      weighedAnew(steps)
          .map(anew -> new Turn(steps.stream().map(Step::change).toList(), anew.probability(cause)))
          .ifPresent(turns::add);
    }
  }

  /** Whether the cause leads clearly; causes equal except for rounding do not count. */
  private boolean leads(double[] changed) {
    int own = index(cause);
    double most = changed[own] * (1 - TIE);
    for (int c = 0; c < changed.length; c++) {
      if (c != own && changed[c] >= most) {
        return false;
      }
    }
    return true;
  }

  private List<Turn> best(List<Turn> turns) {
    return turns.stream()
        .sorted(Comparator.comparingDouble(turn -> -turn.probability()))
        .limit(atMost)
        .toList();
  }

  private double lead(double[] marginals) {
    return marginals[index(cause)] / marginals[index(first)];
  }

  private int index(String id) {
    return posterior.network().cause(id);
  }

  private boolean relevant(String sign) {
    Network network = posterior.network();
    return network.strength(cause, sign) > 0 || network.strength(first, sign) > 0;
  }

  /** The probability of each cause after a step; empty if full trust makes it a contradiction. */
  private static Optional<double[]> after(Posterior from, Step step) {
    Reweighing changed = Reweighing.of(from, step.gone(), step.come());
    return changed == null
        ? weighedAnew(from, List.of(step)).map(Posterior::marginals)
        : Optional.of(changed.marginals(0));
  }

  private Optional<Posterior> weighedAnew(List<Step> steps) {
    return weighedAnew(posterior, steps);
  }

  private static Optional<Posterior> weighedAnew(Posterior from, List<Step> steps) {
    List<Observation> gone = present(steps, Step::gone);
    List<Observation> come = present(steps, Step::come);
    try {
      Posterior left = from;
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
