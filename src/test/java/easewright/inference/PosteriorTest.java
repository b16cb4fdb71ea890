package easewright.inference;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PosteriorTest {

  /** Against the definitions written out (Jaakkola and Jordan 1999, JAIR 10). */
  @Property(tries = 1000)
  void the_sums_agree_with_plain_enumeration(@ForAll long seed) {
    var small = new RandomNetworks(seed, 7, 8);
    var observations = small.observations();
    var plain = small.plain(2).posterior(observations);
    var posterior = Posterior.infer(small.network(), observations);
    for (String cause : small.priors.keySet()) {
      assertEquals(PlainEvaluator.marginal(plain, cause), posterior.probability(cause), 1e-10);
    }
    var hypotheses = posterior.hypotheses(Integer.MAX_VALUE);
    assertEquals(plain.size(), hypotheses.size());
    for (var expected : plain) {
      double actual =
          hypotheses.stream()
              .filter(h -> h.causes().equals(expected.causes()))
              .mapToDouble(Hypothesis::probability)
              .sum();
      assertEquals(expected.probability(), actual, 1e-10, expected.causes().toString());
    }
    assertEquals(PlainEvaluator.entropy(plain), posterior.entropy(), 1e-8);
  }

  /**
   * Jeffrey's rule (The Logic of Decision, 1965, chapter 11, from memory): a report that was meant
   * with probability s leaves s times what it would leave if meant, and 1 − s times what was
   * before.
   */
  @Property(tries = 300)
  void a_report_that_was_perhaps_meant_counts_as_far_as_it_was(
      @ForAll long seed, @ForAll @DoubleRange(min = 0.01, max = 1) double sure) {
    var small = new RandomNetworks(seed, 6, 6);
    var before = Posterior.infer(small.network(), List.of());
    for (Observation seen : small.observations()) {
      if (seen.trust() < 1) {
        var meant = DoubtfulReport.of(before, seen, sure);
        var after = Posterior.infer(small.network(), meant.map(List::of).orElse(List.of()));
        var ifMeant = Posterior.infer(small.network(), List.of(seen));
        for (String cause : small.priors.keySet()) {
          double expected =
              sure * ifMeant.probability(cause) + (1 - sure) * before.probability(cause);
          assertEquals(expected, after.probability(cause), 1e-9, cause);
        }
      }
    }
  }

  /** Against the same definitions, once more as one loop over bit masks: fast enough for many. */
  @Test
  void a_hundred_thousand_random_observation_sets_agree_with_plain_enumeration() {
    var random = new Random(1999);
    double worst = 0;
    for (int round = 0; round < 500; round++) {
      var small = new RandomNetworks(random.nextLong(), 6, 6);
      Network network = small.network();
      for (int set = 0; set < 200; set++) {
        var observations = small.observations();
        double[] plain = marginalsByMask(small, observations);
        var posterior = Posterior.infer(network, observations);
        for (int c = 0; c < small.priors.size(); c++) {
          worst = Math.max(worst, Math.abs(plain[c] - posterior.probability("c" + c)));
        }
      }
    }
    assertTrue(worst < 1e-10, "largest difference " + worst);
  }

  private static double[] marginalsByMask(RandomNetworks small, List<Observation> observations) {
    int n = small.priors.size();
    double[] sums = new double[n];
    double total = 0;
    for (int mask = 0; mask < 1 << n; mask++) {
      if (Integer.bitCount(mask) > 2) {
        continue;
      }
      double p = 1;
      for (int c = 0; c < n; c++) {
        double prior = small.priors.get("c" + c);
        p *= (mask >> c & 1) == 1 ? prior : 1 - prior;
      }
      for (Observation seen : observations) {
        double absent = 1 - small.leaks.get(seen.sign());
        for (Link link : small.links) {
          if (link.sign().equals(seen.sign())
              && (mask >> (link.cause().charAt(1) - '0') & 1) == 1) {
            absent *= 1 - link.strength();
          }
        }
        double reported = seen.present() ? 1 - absent : absent;
        p *= seen.trust() * reported + (1 - seen.trust()) * (1 - reported);
      }
      total += p;
      for (int c = 0; c < n; c++) {
        sums[c] += (mask >> c & 1) == 1 ? p : 0;
      }
    }
    for (int c = 0; c < n; c++) {
      sums[c] /= total;
    }
    return sums;
  }

  /**
   * Leaving out three faults at once conditions the full posterior on at most two, so no
   * probability moves by more than P(three or more | observations): a property of conditioning,
   * computed here over all subsets.
   */
  @Property(tries = 300)
  void no_probability_is_further_from_the_full_sum_than_three_faults_are_probable(
      @ForAll long seed) {
    var small = new RandomNetworks(seed, 8, 6);
    var observations = small.observations();
    var full = small.plain(8).posterior(observations);
    double beyond =
        full.stream().filter(w -> w.causes().size() > 2).mapToDouble(w -> w.probability()).sum();
    var posterior = Posterior.infer(small.network(), observations);
    for (String cause : small.priors.keySet()) {
      double error = posterior.probability(cause) - PlainEvaluator.marginal(full, cause);
      assertTrue(Math.abs(error) <= beyond + 1e-10, cause + " is off by " + error);
    }
  }

  @Property(tries = 300)
  void all_hypotheses_together_are_certain(@ForAll long seed) {
    var small = new RandomNetworks(seed, 9, 8);
    var posterior = Posterior.infer(small.network(), small.observations());
    double sum =
        posterior.hypotheses(Integer.MAX_VALUE).stream().mapToDouble(Hypothesis::probability).sum();
    assertEquals(1, sum, 1e-12);
    assertTrue(posterior.causes(99).stream().allMatch(c -> c.probability() <= 1));
  }

  @Property(tries = 500)
  void a_denied_sign_never_raises_the_odds_of_a_cause_against_nothing_wrong(@ForAll long seed) {
    var small = new RandomNetworks(seed, 7, 8);
    var observations = small.observations();
    var before = Posterior.infer(small.network(), observations);
    for (String sign : small.unknown(observations)) {
      var more = new ArrayList<>(observations);
      more.add(new Observation(sign, false, 0.51 + 0.48 * Math.abs(seed % 100) / 100));
      var after = Posterior.infer(small.network(), more);
      for (String cause : small.priors.keySet()) {
        double was = before.probability(cause) / before.nothing();
        double is = after.probability(cause) / after.nothing();
        assertTrue(is <= was * (1 + 1e-12), cause + " rose from " + was + " to " + is);
      }
    }
  }

  @Property(tries = 300)
  void the_order_of_observations_changes_not_a_bit(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 8);
    var observations = new ArrayList<>(small.observations());
    var expected = Posterior.infer(small.network(), observations).hypotheses(Integer.MAX_VALUE);
    Collections.shuffle(observations, new Random(seed));
    assertEquals(
        expected, Posterior.infer(small.network(), observations).hypotheses(Integer.MAX_VALUE));
  }

  @Property(tries = 300)
  void a_sign_no_cause_bears_on_changes_nothing(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 8);
    small.leaks.put("unlinked", 0.3);
    var observations = small.observations();
    observations.removeIf(o -> o.sign().equals("unlinked"));
    double[] without = Posterior.infer(small.network(), observations).marginals();
    observations.add(new Observation("unlinked", seed % 2 == 0, 0.9));
    var with = Posterior.infer(small.network(), observations);
    assertArrayEquals(without, with.marginals(), 1e-12);
  }

  /** Explaining away (Pearl 1988, from memory). */
  @Test
  void proof_of_one_cause_lowers_the_other_that_shares_its_sign() {
    Network network =
        Network.builder()
            .cause("a", 0.1)
            .cause("b", 0.1)
            .sign("shared", 0.01)
            .sign("proof-of-b", 0.001)
            .link("a", "shared", 0.9)
            .link("b", "shared", 0.9)
            .link("b", "proof-of-b", 0.9)
            .build();
    var shared = new Observation("shared", true, 1);
    double before = Posterior.infer(network, List.of(shared)).probability("a");
    double after =
        Posterior.infer(network, List.of(shared, new Observation("proof-of-b", true, 1)))
            .probability("a");
    assertTrue(before > 0.5, "the shared sign speaks for both: " + before);
    assertTrue(after < 0.15, "a is back near its prior: " + after);
  }

  /** Bayes' theorem in odds form, computed: prior 1 %, likelihood ratio 20 gives 20/119 = 17 %. */
  @Test
  void a_one_percent_cause_with_a_likelihood_ratio_of_twenty_comes_to_seventeen_percent() {
    // P(sign | cause) = 1 − 0.96·(1 − strength) = 0.8, twenty times the leak of 0.04.
    Network network =
        Network.builder().cause("a", 0.01).sign("s", 0.04).link("a", "s", 1 - 0.2 / 0.96).build();
    var posterior = Posterior.infer(network, List.of(new Observation("s", true, 1)));
    assertEquals(20.0 / 119, posterior.probability("a"), 1e-12);
    assertEquals(0.17, posterior.probability("a"), 0.005);
  }

  @Test
  void a_hundred_and_twenty_present_signs_of_tiny_leak_neither_overflow_nor_vanish() {
    var builder = Network.builder().cause("a", 0.01).cause("b", 0.01).cause("c", 0.01);
    var observations = new ArrayList<Observation>();
    for (int s = 0; s < 120; s++) {
      builder.sign("s" + s, 1e-12).link(s % 2 == 0 ? "a" : "b", "s" + s, 0.5);
      observations.add(new Observation("s" + s, true, 1));
    }
    var posterior = Posterior.infer(builder.build(), observations);
    assertEquals(List.of("a", "b"), posterior.hypotheses(1).get(0).causes());
    assertEquals(1, posterior.hypotheses(1).get(0).probability(), 1e-9);
  }

  @Test
  void three_proofs_of_three_causes_are_more_than_two_faults_can_explain() {
    var builder = Network.builder();
    var observations = new ArrayList<Observation>();
    for (String id : List.of("a", "b", "c")) {
      builder.cause(id, 0.1).sign("sign-of-" + id, 0).link(id, "sign-of-" + id, 0.5);
      observations.add(new Observation("sign-of-" + id, true, 1));
    }
    Network network = builder.build();
    assertThrows(ImpossibleObservations.class, () -> Posterior.infer(network, observations));
    observations.set(0, new Observation("sign-of-a", true, 0.99));
    assertEquals(
        List.of("b", "c"), Posterior.infer(network, observations).hypotheses(1).get(0).causes());
  }

  @Test
  void a_present_sign_the_best_hypothesis_does_not_show_is_unexplained() {
    Network network =
        Network.builder()
            .cause("a", 0.1)
            .cause("b", 0.001)
            .sign("strong", 0.01)
            .sign("stray", 0.05)
            .sign("weak", 0.2)
            .link("a", "strong", 0.9)
            .link("a", "weak", 0.1)
            .link("b", "stray", 0.2)
            .build();
    var strong = new Observation("strong", true, 1);
    var stray = new Observation("stray", true, 1);
    var weak = new Observation("weak", true, 1);
    var posterior = Posterior.infer(network, List.of(strong, stray, weak));
    assertEquals(List.of("a"), posterior.hypotheses(1).get(0).causes());
    // P(weak | a) = 1 − 0.8·0.9 = 0.28, 1.4 times its leak.
    assertEquals(List.of(stray), posterior.unexplained(1.3));
    assertEquals(List.of(stray, weak), posterior.unexplained(1.5));
    assertThrows(IllegalArgumentException.class, () -> posterior.unexplained(0.9));
  }

  @Test
  void the_best_hypotheses_come_in_order_and_the_simpler_first_among_equals() {
    Network network = Network.builder().cause("b", 0.5).cause("a", 0.5).build();
    var posterior = Posterior.infer(network, List.of());
    assertEquals(
        List.of(List.of(), List.of("a"), List.of("b"), List.of("a", "b")),
        posterior.hypotheses(9).stream().map(Hypothesis::causes).toList());
    assertEquals(2, posterior.entropy(), 1e-12);
    assertEquals(List.of(), posterior.hypotheses(0));
  }
}
