package easewright.inference;

import java.util.Arrays;
import java.util.List;

/**
 * Puts many observations into weights at once. Compared with "nothing wrong", a report favours a
 * cause by a ratio that is one for nearly all, and a pair of causes by the product of both ratios
 * unless both bear on the sign. So the ratios of all reports are gathered per cause and multiplied
 * into the thousands of pairs in one pass, and only pairs that share a sign are corrected, report
 * by report. Nothing is approximated.
 */
final class Gathering {
  /** Beyond these limits ratios lose digits or cannot be divided by. */
  private static final double LEAST_RATIO = 1e-9;

  private static final double MOST_RATIO = 1e9;
  private static final double MOST_GATHERED = 1e100;

  private final Network network;
  private final List<Observation> reports;
  private final int[] signs;
  private final double[][] ratios;
  private final double[] gathered;

  private Gathering(Network network, List<Observation> reports) {
    this.network = network;
    this.reports = reports;
    this.signs = new int[reports.size()];
    this.ratios = new double[reports.size()][];
    this.gathered = new double[network.causes().size()];
    Arrays.fill(gathered, 1);
  }

  /**
   * The weights after some observations, not normalized.
   *
   * @return null where a ratio is extreme, as with proofs: multiply one by one, and rescale
   */
  static Weights of(Network network, List<Observation> reports, Weights before) {
    Gathering gathering = new Gathering(network, reports);
    if (!gathering.gather()) {
      return null;
    }
    Weights after = before.copy();
    after.multiply(0, 1, gathering.gathered);
    gathering.setMeetingPairsRight(after);
    return after;
  }

  private boolean gather() {
    for (int k = 0; k < signs.length; k++) {
      Observation seen = reports.get(k);
      signs[k] = network.sign(seen.sign());
      int[] linked = network.linked(signs[k]);
      ratios[k] = new double[linked.length];
      for (int a = 0; a < linked.length; a++) {
        double ratio = ratio(seen, signs[k], network.misses(signs[k])[linked[a]]);
        if (!(ratio > LEAST_RATIO && ratio < MOST_RATIO)) {
          return false;
        }
        ratios[k][a] = ratio;
        gathered[linked[a]] *= ratio;
      }
    }
    for (double ratio : gathered) {
      if (!(ratio > 1 / MOST_GATHERED && ratio < MOST_GATHERED)) {
        return false;
      }
    }
    return true;
  }

  private void setMeetingPairsRight(Weights weights) {
    for (int k = 0; k < signs.length; k++) {
      int[] linked = network.linked(signs[k]);
      double[] misses = network.misses(signs[k]);
      for (int a = 0; a < linked.length; a++) {
        for (int b = a + 1; b < linked.length; b++) {
          double both = ratio(reports.get(k), signs[k], misses[linked[a]] * misses[linked[b]]);
          weights.multiplyPair(linked[a], linked[b], both / (ratios[k][a] * ratios[k][b]));
        }
      }
    }
  }

  /** Likelihood of a report given ∏ misses of the causes at work, relative to none at work. */
  private double ratio(Observation seen, int sign, double missed) {
    double slope = seen.slope() * network.silence(sign, seen);
    return (seen.fixed() + slope * missed) / (seen.fixed() + slope);
  }
}
