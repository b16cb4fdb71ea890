package easewright.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The probabilities of "nothing wrong", every cause and every pair of causes after the
 * observations. The prior of a hypothesis is ∏ p over its causes times ∏ (1 − p) over the others,
 * rescaled to sum 1 over these hypotheses: so it equals the full posterior given that at most two
 * causes are at work.
 */
public final class Posterior {
  /**
   * Probabilities that differ by less than this part of themselves are equal except for rounding.
   */
  private static final double TIE = 1e-9;

  /** Between rescalings the weights must not underflow, even with leaks as small as 1e-30. */
  private static final int OBSERVATIONS_PER_RESCALING = 8;

  private final Network network;
  private final List<Observation> observations;
  private final Weights weights;
  private final double[] marginals;

  private Posterior(
      Network network, List<Observation> observations, Weights start, List<Observation> fresh) {
    this.network = network;
    this.observations = observations;
    Weights gathered = Gathering.of(network, fresh, start);
    this.weights = gathered == null ? oneByOne(network, fresh, start) : gathered;
    this.marginals = weights.normalize();
  }

  private static Weights oneByOne(Network network, List<Observation> fresh, Weights start) {
    Weights weights = start.copy();
    for (int k = 0; k < fresh.size(); k++) {
      apply(network, fresh.get(k), weights);
      if (k % OBSERVATIONS_PER_RESCALING == OBSERVATIONS_PER_RESCALING - 1) {
        weights.normalize();
      }
    }
    return weights;
  }

  /**
   * Infers exactly, in any order of the observations with the same result to the last bit.
   *
   * @throws IllegalArgumentException if a sign is unknown to the network or reported twice
   * @throws ImpossibleObservations if no hypothesis allows them all; only with full trust
   */
  public static Posterior infer(Network network, Collection<Observation> observations) {
    var sorted = new ArrayList<>(observations);
    sorted.sort(Comparator.comparing(Observation::sign));
    for (int k = 1; k < sorted.size(); k++) {
      if (sorted.get(k).sign().equals(sorted.get(k - 1).sign())) {
        throw new IllegalArgumentException(
            "The sign %s is reported twice.".formatted(sorted.get(k).sign()));
      }
    }
    var seen = List.copyOf(sorted);
    return new Posterior(network, seen, network.prior(), seen);
  }

  /** This posterior after more observations, of signs not observed yet. */
  Posterior and(List<Observation> more) {
    var all = Stream.concat(observations.stream(), more.stream()).toList();
    return new Posterior(network, all, weights, more);
  }

  /** This posterior had one of its observations not been made. */
  public Posterior without(Observation seen) {
    var left = observations.stream().filter(o -> o != seen).toList();
    if (!WeightsOfEvidence.divisible(network, seen)) {
      return infer(network, left);
    }
    int sign = network.sign(seen.sign());
    double slope = seen.slope() * network.silence(sign, seen);
    Weights rest = weights.copy();
    weights.divide(seen.fixed(), slope, network.misses(sign), rest);
    return new Posterior(network, left, rest, List.of());
  }

  /** The network inferred in. */
  public Network network() {
    return network;
  }

  /** The observations, by id of their sign. */
  public List<Observation> observations() {
    return observations;
  }

  /** Probability, 0 to 1, that nothing is wrong. */
  public double nothing() {
    return weights.nothing;
  }

  /** Probability, 0 to 1, that the cause is at work, alone or with another. */
  public double probability(String cause) {
    return marginals[network.cause(cause)];
  }

  /** Probability, 0 to 1, that the cause and no other is at work. */
  public double probabilityAlone(String cause) {
    return weights.single[network.cause(cause)];
  }

  /** Id of the most probable cause, whether or not "nothing wrong" is more probable still. */
  public String first() {
    int first = 0;
    for (int c = 1; c < marginals.length; c++) {
      first = more(marginals[c], marginals[first]) ? c : first;
    }
    return network.causes().get(first);
  }

  /** The most probable causes, best first; equals in alphabetical order. */
  public List<CauseProbability> causes(int atMost) {
    return leading(network, marginals, atMost);
  }

  /** The most probable hypotheses, best first; among equals the simpler first. */
  public List<Hypothesis> hypotheses(int atMost) {
    int[] best = new int[Math.min(atMost, weights.size())];
    int kept = 0;
    for (int h = 0; h < weights.size() && best.length > 0; h++) {
      double weight = weights.weight(h);
      if (kept == best.length && weight <= weights.weight(best[kept - 1])) {
        continue;
      }
      int at = kept == best.length ? kept - 1 : kept++;
      for (; at > 0 && weight > weights.weight(best[at - 1]); at--) {
        best[at] = best[at - 1];
      }
      best[at] = h;
    }
    return IntStream.of(best)
        .mapToObj(h -> new Hypothesis(causesOf(h), weights.weight(h)))
        .toList();
  }

  private List<String> causesOf(int hypothesis) {
    return weights.causes(hypothesis).mapToObj(network.causes()::get).toList();
  }

  /** Entropy of the distribution over all hypotheses, in bits. */
  public double entropy() {
    double sum = 0;
    for (int h = 0; h < weights.size(); h++) {
      sum += surprise(weights.weight(h));
    }
    return sum;
  }

  /**
   * Present signs that the most probable hypothesis leaves unexplained.
   *
   * @param ratio a sign counts as explained if the hypothesis makes it more than this many times as
   *     probable as its leak; at least 1
   */
  public List<Observation> unexplained(double ratio) {
    if (!(ratio >= 1)) {
      throw new IllegalArgumentException("The ratio must be at least 1, not %s.".formatted(ratio));
    }
    List<String> best = causesOf(weights.heaviest());
    return observations.stream()
        .filter(Observation::present)
        .filter(o -> !explain(best, o.sign(), ratio))
        .toList();
  }

  /** Whether a cause explains a sign; the ratio is that of {@link #unexplained}. */
  public boolean explains(String cause, String sign, double ratio) {
    return explain(List.of(cause), sign, ratio);
  }

  private boolean explain(List<String> causes, String sign, double ratio) {
    return network.probability(sign, causes) > ratio * network.probability(sign, List.of());
  }

  static void apply(Network network, Observation seen, Weights weights) {
    int sign = network.sign(seen.sign());
    weights.multiply(
        seen.fixed(), seen.slope() * network.silence(sign, seen), network.misses(sign));
  }

  /** The causes at least this probable, best first; equals in alphabetical order. */
  public List<CauseProbability> causesFrom(double least) {
    int[] found = new int[marginals.length];
    int count = 0;
    for (int c = 0; c < found.length; c++) {
      if (marginals[c] >= least) {
        found[count++] = c;
      }
    }
    return inOrder(network, marginals, found, count, count);
  }

  static List<CauseProbability> leading(Network network, double[] marginals, int atMost) {
    int[] all = IntStream.range(0, marginals.length).toArray();
    return inOrder(network, marginals, all, all.length, atMost);
  }

  /** By insertion, since few of the causes are wanted and few are found. */
  private static List<CauseProbability> inOrder(
      Network network, double[] marginals, int[] causes, int count, int atMost) {
    int[] best = new int[Math.min(atMost, count)];
    int kept = 0;
    for (int k = 0; k < count && best.length > 0; k++) {
      double probability = marginals[causes[k]];
      if (kept == best.length && !more(probability, marginals[best[kept - 1]])) {
        continue;
      }
      int at = kept == best.length ? kept - 1 : kept++;
      for (; at > 0 && more(probability, marginals[best[at - 1]]); at--) {
        best[at] = best[at - 1];
      }
      best[at] = causes[k];
    }
    List<CauseProbability> leading = new ArrayList<>(best.length);
    for (int c : best) {
      leading.add(new CauseProbability(network.causes().get(c), marginals[c]));
    }
    return leading;
  }

  /** Which way a sum was rounded must not decide which of two equals comes first. */
  static boolean more(double probability, double other) {
    return probability > other * (1 + TIE);
  }

  /** −p·log2 p, and 0 at p = 0. */
  private static double surprise(double p) {
    return p > 0 ? -p * Math.log(p) / Math.log(2) : 0;
  }

  Weights weights() {
    return weights;
  }

  double[] marginals() {
    return marginals;
  }
}
