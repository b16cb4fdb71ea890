package easewright.inference;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * How much each observation speaks for and against each cause, in two ways: its weight of evidence
 * for "this cause alone" against "nothing wrong", in decibans, which add up exactly (Good 1950,
 * from memory); and how probable the cause would be without the observation, all hypotheses
 * considered. Not for use by several threads.
 */
public final class WeightsOfEvidence {
  /** Below this, dividing a factor out again would multiply rounding and underflow too much. */
  private static final double SMALLEST_DIVISOR = 1e-9;

  private final Posterior posterior;
  private final IntToDoubleFunction[] without;
  private final int[] signs;

  private WeightsOfEvidence(Posterior posterior) {
    this.posterior = posterior;
    this.without = new IntToDoubleFunction[posterior.observations().size()];
    this.signs =
        posterior.observations().stream()
            .mapToInt(seen -> posterior.network().sign(seen.sign()))
            .toArray();
  }

  /**
   * Weighs the observations of a posterior; what it would be without one is worked out when asked.
   */
  public static WeightsOfEvidence of(Posterior posterior) {
    return new WeightsOfEvidence(posterior);
  }

  /**
   * One observation as it bears on one cause.
   *
   * @param observation the report
   * @param decibans 10·log10 of P(report | this cause alone) / P(report | nothing wrong); infinite
   *     where one of them is impossible
   * @param probabilityWithout probability, 0 to 1, of the cause (alone or with another) had this
   *     observation not been made
   */
  public record Weight(Observation observation, double decibans, double probabilityWithout) {}

  /** Log-odds of "this cause alone" against "nothing wrong" before any observation, in decibans. */
  public double priorDecibans(String cause) {
    Weights prior = posterior.network().prior();
    return decibans(prior.single[posterior.network().cause(cause)], prior.nothing);
  }

  /** The same log-odds after all observations: prior plus every weight, in decibans. */
  public double posteriorDecibans(String cause) {
    return decibans(posterior.probabilityAlone(cause), posterior.nothing());
  }

  /** Each observation's weight for the cause, in the order of the posterior's observations. */
  public List<Weight> weights(String cause) {
    int c = posterior.network().cause(cause);
    return IntStream.range(0, without.length).mapToObj(k -> weight(k, c, decibans(k, c))).toList();
  }

  /** The same without the observations that say nothing of the cause. */
  public List<Weight> weightsThatTell(String cause) {
    int c = posterior.network().cause(cause);
    List<Weight> weights = new ArrayList<>();
    for (int k = 0; k < without.length; k++) {
      double decibans = decibans(k, c);
      if (decibans != 0) {
        weights.add(weight(k, c, decibans));
      }
    }
    return weights;
  }

  private Weight weight(int observation, int cause, double decibans) {
    Observation seen = posterior.observations().get(observation);
    if (without[observation] == null) {
      without[observation] = without(seen);
    }
    return new Weight(seen, decibans, without[observation].applyAsDouble(cause));
  }

  private double decibans(int observation, int cause) {
    Network network = posterior.network();
    Observation seen = posterior.observations().get(observation);
    int sign = signs[observation];
    double silent = seen.slope() * network.silence(sign, seen);
    double alone = seen.fixed() + silent * network.misses(sign)[cause];
    return decibans(alone, seen.fixed() + silent);
  }

  private IntToDoubleFunction without(Observation seen) {
    Reweighing rest = Reweighing.of(posterior, seen, null);
    if (rest != null) {
      return rest::marginal;
    }
    double[] marginals = posterior.without(seen).marginals();
    return cause -> marginals[cause];
  }

  /** Whether an observation may be divided out of the weights again. */
  static boolean divisible(Network network, Observation seen) {
    int sign = network.sign(seen.sign());
    double slope = seen.slope() * network.silence(sign, seen);
    // The factor runs monotonically from no cause to the two strongest, so an end is smallest.
    double smallest =
        Math.min(seen.fixed() + slope, seen.fixed() + slope * network.leastMissed(sign));
    return smallest >= SMALLEST_DIVISOR;
  }

  private static double decibans(double likelihood, double other) {
    return likelihood == other ? 0 : 10 * Math.log10(likelihood / other);
  }
}
