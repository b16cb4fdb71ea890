package easewright.inference;

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
  private final double leastMissed;
  private final Factor factor;
  private final double unlinkedFactor;
  private final double total;

  private Reweighing(Posterior posterior, int sign, Factor factor) {
    this.weights = posterior.weights();
    this.marginals = posterior.marginals();
    this.linked = posterior.network().linked(sign);
    this.misses = posterior.network().misses(sign);
    this.leastMissed = posterior.network().leastMissed(sign);
    this.factor = factor;
    this.unlinkedFactor = factor.at(1);
    this.total = sum();
  }

  /**
   * The posterior with one report of a sign put in, taken out, or both.
   *
   * @param gone one of its observations, or null
   * @param come an observation of the same sign, or of one not observed yet, or null
   * @return null where this way would lose more than three digits: weigh every hypothesis anew
   */
  static Reweighing of(Posterior posterior, Observation gone, Observation come) {
    Network network = posterior.network();
    int sign = network.sign((gone == null ? come : gone).sign());
    Factor factor =
        new Factor(
            come == null ? 1 : come.fixed(),
            come == null ? 0 : come.slope() * network.silence(sign, come),
            gone == null ? 1 : gone.fixed(),
            gone == null ? 0 : gone.slope() * network.silence(sign, gone));
    return factor.spread(network.leastMissed(sign)) <= WIDEST_SPREAD
        ? new Reweighing(posterior, sign, factor)
        : null;
  }

  /** What a weight is multiplied by, given ∏ misses of its causes: what comes by what goes. */
  private record Factor(double fixed, double slope, double goneFixed, double goneSlope) {
    double at(double miss) {
      return (fixed + slope * miss) / (goneFixed + goneSlope * miss);
    }

    /** It runs monotonically from no cause to the two strongest. */
    double spread(double leastMissed) {
      double none = at(1);
      double other = at(leastMissed);
      double spread = Math.max(none, other) / Math.min(none, other);
      return spread >= 1 ? spread : Double.POSITIVE_INFINITY;
    }
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
    double own = factor.at(misses[cause]);
    double sum = marginals[cause] * own;
    for (int other : linked) {
      if (other != cause) {
        sum += weights.pair(cause, other) * (factor.at(misses[cause] * misses[other]) - own);
      }
    }
    return Math.min(1, Math.max(0, sum) / total);
  }

  /**
   * The marginals of all causes that may become as probable as one that had at least {@code least}
   * before; zero for the others, which no factor can lift so far.
   */
  double[] marginals(double least) {
    double bound = least / factor.spread(leastMissed) * (1 - 1e-9);
    double[] all = new double[marginals.length];
    for (int c = 0; c < all.length; c++) {
      if (marginals[c] >= bound) {
        all[c] = marginal(c);
      }
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
        sum += both * factor.at(misses[linked[a]] * misses[linked[b]]);
      }
      double rest = Math.max(0, alone[a]);
      unlinked -= rest;
      sum += rest * factor.at(misses[linked[a]]);
    }
    return sum + Math.max(0, unlinked) * unlinkedFactor;
  }
}
