package easewright.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.inference.WeightsOfEvidence.Weight;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class WeightsOfEvidenceTest {

  /** Good 1950 (from memory): posterior log-odds = prior log-odds + sum of the weights. */
  @Property(tries = 1000)
  void prior_and_weights_add_up_to_the_posterior_odds(@ForAll long seed) {
    var small = new RandomNetworks(seed, 7, 8);
    var observations = small.observations();
    var evidence = WeightsOfEvidence.of(Posterior.infer(small.network(), observations));
    for (String cause : small.priors.keySet()) {
      double sum =
          evidence.weights(cause).stream().mapToDouble(Weight::decibans).sum()
              + evidence.priorDecibans(cause);
      assertEquals(sum, evidence.posteriorDecibans(cause), 1e-8);
    }
  }

  /** Each weight against its definition, 10·log10 of a ratio of likelihoods (Good 1950). */
  @Property(tries = 300)
  void each_weight_is_the_ratio_of_plain_likelihoods(@ForAll long seed) {
    var small = new RandomNetworks(seed, 5, 6);
    var plain = small.plain(2);
    var posterior = Posterior.infer(small.network(), small.observations());
    for (String cause : small.priors.keySet()) {
      for (Weight weight : WeightsOfEvidence.of(posterior).weights(cause)) {
        double ratio =
            plain.report(weight.observation(), List.of(cause))
                / plain.report(weight.observation(), List.of());
        assertEquals(10 * Math.log10(ratio), weight.decibans(), 1e-8);
      }
    }
  }

  /** Against plain enumeration of what is left when the observation is taken out. */
  @Property(tries = 1000)
  void the_probability_without_an_observation_is_that_of_inferring_without_it(@ForAll long seed) {
    var small = new RandomNetworks(seed, 7, 8);
    var observations = small.observations();
    var evidence = WeightsOfEvidence.of(Posterior.infer(small.network(), observations));
    for (Observation seen : observations) {
      var others = new ArrayList<>(observations);
      others.remove(seen);
      var plain = small.plain(2).posterior(others);
      for (String cause : small.priors.keySet()) {
        double stated =
            evidence.weights(cause).stream()
                .filter(w -> w.observation().equals(seen))
                .mapToDouble(Weight::probabilityWithout)
                .sum();
        assertEquals(PlainEvaluator.marginal(plain, cause), stated, 1e-9);
      }
    }
  }

  @Test
  void a_proof_can_be_taken_out_again_although_its_factor_is_zero() {
    Network network =
        Network.builder()
            .cause("a", 0.1)
            .cause("b", 0.1)
            .sign("proof-of-a", 0)
            .sign("certain-with-b", 0.2)
            .link("a", "proof-of-a", 0.5)
            .link("b", "certain-with-b", 1)
            .build();
    var proof = new Observation("proof-of-a", true, 1);
    var denial = new Observation("certain-with-b", false, 1);
    var posterior = Posterior.infer(network, List.of(proof, denial));
    assertEquals(1, posterior.probability("a"), 1e-12);
    assertEquals(0, posterior.probability("b"), 1e-12);

    var evidence = WeightsOfEvidence.of(posterior);
    // By hand: with b ruled out, a keeps its prior; with a proved, so does b.
    assertEquals(0.1, without(evidence, "a", proof), 1e-12);
    assertEquals(0.1, without(evidence, "b", denial), 1e-12);
    assertEquals(
        Double.POSITIVE_INFINITY,
        evidence.weights("a").stream().mapToDouble(Weight::decibans).max().orElseThrow());
    assertTrue(
        evidence.weights("b").stream().anyMatch(w -> w.decibans() == Double.NEGATIVE_INFINITY));
  }

  private static double without(WeightsOfEvidence evidence, String cause, Observation seen) {
    return evidence.weights(cause).stream()
        .filter(w -> w.observation().equals(seen))
        .findFirst()
        .orElseThrow()
        .probabilityWithout();
  }
}
