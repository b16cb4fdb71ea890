package easewright.diagnosis.inference;

/**
 * What a posterior becomes when the factors of one sign are put in or taken out. Hypotheses without
 * a cause linked to the sign all get the same factor, so the sums over thousands of pairs follow
 * from the marginals and the few pairs that hold a linked cause. Nothing is approximated.
 */
final class Reweighing {
  /**
   * The sums are differences; where factors lie further apart than this, too many digits cancel.
   */
  private static final double WIDEST_SPREAD = 1e3;

  private final Weights weights;
  private final double[] marginals;
  private final int[] linked;
  private final double[] misses;
  private final double fixed;
  private final double slope;
  private final boolean out;
  private final double unlinkedFactor;
  private final double total;

  private Reweighing(Posterior posterior, Observation seen, boolean out) {
    Network network = posterior.network();
    int sign = network.sign(seen.sign());
    this.weights = posterior.weights();
    this.marginals = posterior.marginals();
    this.linked = network.linked(sign);
    this.misses = network.misses(sign);
    this.fixed = seen.fixed();
    this.slope = seen.slope() * network.silence(sign);
    this.out = out;
    this.unlinkedFactor = factor(1);
    this.total = sum();
  }

  /** The posterior with one more observation; see {@link #exact}. */
  static Reweighing with(Posterior posterior, Observation more) {
    return new Reweighing(posterior, more, false);
  }

  /** The posterior without one of its observations; see {@link #exact}. */
  static Reweighing without(Posterior posterior, Observation seen) {
    return new Reweighing(posterior, seen, true);
  }

  /** Whether this way loses no more than three digits; if not, weigh every hypothesis anew. */
  static boolean exact(Network network, Observation seen) {
    int sign = network.sign(seen.sign());
    double[] misses = network.misses(sign);
    double least = 1;
    double second = 1;
    for (int c : network.linked(sign)) {
      second = Math.min(second, Math.max(least, misses[c]));
      least = Math.min(least, misses[c]);
    }
    // The factor runs monotonically from no cause to the two strongest.
    double slope = seen.slope() * network.silence(sign);
    double none = seen.fixed() + slope;
    double strongest = seen.fixed() + slope * least * second;
    return Math.max(none, strongest) <= WIDEST_SPREAD * Math.min(none, strongest);
  }

  /** Sum of the new weights per sum of the old: the probability of an observation put in. */
  double total() {
    return total;
  }

  /** Probability, 0 to 1, that nothing is wrong. */
  double nothing() {
    return weights.nothing * unlinkedFactor / total;
  }

  /** Probability, 0 to 1, that the cause is at work, alone or with another. */
  double marginal(int cause) {
    double own = factor(misses[cause]);
    double sum = marginals[cause] * own;
    for (int other : linked) {
      if (other != cause) {
        sum += weights.pair(cause, other) * (factor(misses[cause] * misses[other]) - own);
      }
    }
    return Math.min(1, Math.max(0, sum) / total);
  }

  double[] marginals() {
    double[] all = new double[marginals.length];
    for (int c = 0; c < all.length; c++) {
      all[c] = marginal(c);
    }
    return all;
  }

  private double sum() {
    double[] alone = new double[linked.length];
    double unlinked = 1;
    double sum = 0;
    for (int a = 0; a < linked.length; a++) {
      alone[a] += marginals[linked[a]];
      for (int b = a + 1; b < linked.length; b++) {
        double both = weights.pair(linked[a], linked[b]);
        alone[a] -= both;
        alone[b] -= both;
        unlinked -= both;
        sum += both * factor(misses[linked[a]] * misses[linked[b]]);
      }
      double rest = Math.max(0, alone[a]);
      unlinked -= rest;
      sum += rest * factor(misses[linked[a]]);
    }
    return sum + Math.max(0, unlinked) * unlinkedFactor;
  }

  private double factor(double miss) {
    double factor = fixed + slope * miss;
    return out ? 1 / factor : factor;
  }
}
