package easewright.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.inference.WhyNot.Change;
import easewright.inference.WhyNot.Kind;
import easewright.inference.WhyNot.Turn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class WhyNotTest {
  private static final double TRUST = 0.95;
  private static final BiFunction<String, Boolean, Observation> SURE =
      (sign, present) -> new Observation(sign, present, 1);

  /** Each stated change is made for real and the plain evaluator asked who is first then. */
  @Property(tries = 500)
  void every_stated_change_does_put_the_cause_first(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 7);
    var observations = small.observations();
    var posterior = Posterior.infer(small.network(), observations);
    for (CauseProbability asked : posterior.causes(99).stream().skip(1).toList()) {
      if (posterior.probability(posterior.first()) - asked.probability() < 1e-9) {
        continue;
      }
      var whyNot = explain(posterior, small, asked.cause());
      assertEquals(posterior.first(), whyNot.first());
      double gap = odds(posterior.probability(whyNot.first())) / odds(asked.probability());
      assertEquals(gap, whyNot.oddsGap(), gap * 1e-9);
      for (Turn turn : both(whyNot)) {
        var plain = small.plain(2).posterior(changed(observations, turn.changes()));
        double probability = PlainEvaluator.marginal(plain, asked.cause());
        assertEquals(probability, turn.probability(), 1e-9);
        for (String other : small.priors.keySet()) {
          assertTrue(PlainEvaluator.marginal(plain, other) <= probability + 1e-9);
        }
      }
    }
  }

  /** And no single change that would do is left out: every one is tried by plain enumeration. */
  @Property(tries = 500)
  void no_single_change_that_would_put_the_cause_first_is_left_out(@ForAll long seed) {
    var small = new RandomNetworks(seed, 5, 6);
    var observations = small.observations();
    var posterior = Posterior.infer(small.network(), observations);
    for (CauseProbability asked : posterior.causes(99).stream().skip(1).toList()) {
      if (posterior.probability(posterior.first()) - asked.probability() < 1e-9) {
        continue;
      }
      Set<List<Change>> stated = new HashSet<>();
      both(explain(posterior, small, asked.cause())).forEach(t -> stated.add(t.changes()));
      for (Change change : singleChanges(small, observations)) {
        Network network = small.network();
        if (network.strength(asked.cause(), change.sign()) == 0
            && network.strength(posterior.first(), change.sign()) == 0) {
          continue;
        }
        var plain = small.plain(2).posterior(changed(observations, List.of(change)));
        double mine = PlainEvaluator.marginal(plain, asked.cause());
        double best =
            small.priors.keySet().stream()
                .filter(c -> !c.equals(asked.cause()))
                .mapToDouble(c -> PlainEvaluator.marginal(plain, c))
                .max()
                .orElseThrow();
        if (mine > best + 1e-9) {
          assertTrue(stated.contains(List.of(change)), "left out: " + change);
        }
      }
    }
  }

  @Test
  void where_no_single_answer_suffices_two_together_are_named() {
    Network network =
        Network.builder()
            .cause("a", 0.02)
            .cause("b", 0.02)
            .sign("seen", 0.02)
            .sign("first", 0.1)
            .sign("second", 0.1)
            .sign("elsewhere", 0.1)
            .link("a", "seen", 0.9)
            .link("b", "seen", 0.1)
            .link("b", "first", 0.4)
            .link("b", "second", 0.4)
            .build();
    var posterior = Posterior.infer(network, List.of(new Observation("seen", true, 1)));
    var whyNot = WhyNot.explain(posterior, "b", List.of("first", "second", "elsewhere"), SURE, 9);
    assertEquals(
        List.of(List.of(new Change("first", Kind.PRESENT), new Change("second", Kind.PRESENT))),
        whyNot.answers().stream().map(Turn::changes).toList());
    // Nothing but "seen" speaks for a: denied, a falls behind b.
    assertEquals(
        List.of(List.of(new Change("seen", Kind.REVERSED))),
        whyNot.reports().stream().map(Turn::changes).toList());
  }

  @Test
  void changes_that_full_trust_makes_impossible_are_not_offered() {
    Network network =
        Network.builder()
            .cause("a", 0.2)
            .cause("b", 0.1)
            .sign("never", 0)
            .sign("shows", 0.01)
            .link("b", "shows", 0.9)
            .link("b", "never", 0)
            .link("a", "never", 0)
            .build();
    var posterior = Posterior.infer(network, List.of());
    var whyNot = WhyNot.explain(posterior, "b", List.of("never", "shows"), SURE, 9);
    assertEquals(
        List.of(List.of(new Change("shows", Kind.PRESENT))),
        whyNot.answers().stream().map(Turn::changes).toList());
    assertThrows(
        IllegalArgumentException.class, () -> WhyNot.explain(posterior, "a", List.of(), SURE, 9));
  }

  private static WhyNot explain(Posterior posterior, RandomNetworks small, String cause) {
    return WhyNot.explain(
        posterior,
        cause,
        small.unknown(posterior.observations()),
        WhyNotTest::answer,
        Integer.MAX_VALUE);
  }

  /** A "no" is trusted less than a "yes". */
  private static Observation answer(String sign, boolean present) {
    return new Observation(sign, present, present ? TRUST : 0.9);
  }

  private static List<Turn> both(WhyNot whyNot) {
    var turns = new ArrayList<>(whyNot.answers());
    turns.addAll(whyNot.reports());
    turns.sort(Comparator.comparing(Turn::probability));
    return turns;
  }

  private static List<Change> singleChanges(RandomNetworks small, List<Observation> observations) {
    var changes = new ArrayList<Change>();
    for (String sign : small.unknown(observations)) {
      changes.add(new Change(sign, Kind.PRESENT));
      changes.add(new Change(sign, Kind.ABSENT));
    }
    for (Observation seen : observations) {
      changes.add(new Change(seen.sign(), Kind.REMOVED));
      changes.add(new Change(seen.sign(), Kind.REVERSED));
    }
    return changes;
  }

  private static List<Observation> changed(List<Observation> observations, List<Change> changes) {
    var result = new ArrayList<>(observations);
    for (Change change : changes) {
      result.removeIf(o -> o.sign().equals(change.sign()));
      switch (change.kind()) {
        case PRESENT, ABSENT -> result.add(answer(change.sign(), change.kind() == Kind.PRESENT));
        case REVERSED ->
            observations.stream()
                .filter(o -> o.sign().equals(change.sign()))
                .forEach(o -> result.add(answer(o.sign(), !o.present())));
        default -> {}
      }
    }
    return result;
  }

  private static double odds(double p) {
    return p / (1 - p);
  }
}
