package easewright.inference;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Weights of all hypotheses, in plain arrays because this is the inner loop.
 *
 * <p>Pairs lie in rows by distance: the pair of causes i and (i + d) mod n is at [d − 1][i], for d
 * = 1 … n/2. Rows of per-cause numbers are laid twice over, which spares the "mod n", and shifted
 * by d into a row of their own: the compiler makes vector instructions only of loops that use one
 * index for all arrays, and these take a half to a third of the time.
 */
final class Weights {
  double nothing;
  final double[] single;
  private final double[][] pair;

  private Weights(double nothing, double[] single, double[][] pair) {
    this.nothing = nothing;
    this.single = single;
    this.pair = pair;
  }

  /** Weights in proportion to the prior of each hypothesis; the odds p/(1 − p) are per cause. */
  static Weights prior(double[] odds) {
    int n = odds.length;
    double[][] pair = new double[n / 2][];
    for (int d = 1; d <= pair.length; d++) {
      // At distance n/2 the second half of a row would repeat the first.
      pair[d - 1] = new double[2 * d == n ? d : n];
      for (int i = 0; i < pair[d - 1].length; i++) {
        pair[d - 1][i] = odds[i] * odds[(i + d) % n];
      }
    }
    var weights = new Weights(1, odds.clone(), pair);
    weights.normalize();
    return weights;
  }

  private static double[] twice(double[] row) {
    double[] twice = Arrays.copyOf(row, 2 * row.length);
    System.arraycopy(row, 0, twice, row.length, row.length);
    return twice;
  }

  Weights copy() {
    double[][] rows = new double[pair.length][];
    for (int r = 0; r < rows.length; r++) {
      rows[r] = pair[r].clone();
    }
    return new Weights(nothing, single.clone(), rows);
  }

  /** Number of hypotheses: nothing wrong, the single causes, the pairs, numbered in this order. */
  int size() {
    int n = single.length;
    return 1 + n + n * (n - 1) / 2;
  }

  double weight(int hypothesis) {
    int n = single.length;
    if (hypothesis <= n) {
      return hypothesis == 0 ? nothing : single[hypothesis - 1];
    }
    int k = hypothesis - 1 - n;
    return pair[k / n][k % n];
  }

  /** The hypothesis of most weight; among equals the first. */
  int heaviest() {
    int n = single.length;
    int at = 0;
    double most = nothing;
    for (int i = 0; i < n; i++) {
      if (single[i] > most) {
        most = single[i];
        at = 1 + i;
      }
    }
    for (int d = 0; d < pair.length; d++) {
      for (int i = 0; i < pair[d].length; i++) {
        if (pair[d][i] > most) {
          most = pair[d][i];
          at = 1 + n + d * n + i;
        }
      }
    }
    return at;
  }

  /** The causes of a hypothesis, in rising order. */
  IntStream causes(int hypothesis) {
    int n = single.length;
    if (hypothesis <= n) {
      return hypothesis == 0 ? IntStream.empty() : IntStream.of(hypothesis - 1);
    }
    int k = hypothesis - 1 - n;
    return IntStream.of(k % n, (k % n + k / n + 1) % n).sorted();
  }

  /** Weight of the pair of two different causes. */
  double pair(int one, int other) {
    int n = single.length;
    int low = Math.min(one, other);
    int high = Math.max(one, other);
    int ahead = high - low;
    return 2 * ahead <= n ? pair[ahead - 1][low] : pair[n - ahead - 1][high];
  }

  /** Multiplies the weight of the pair of two different causes. */
  void multiplyPair(int one, int other, double factor) {
    int n = single.length;
    int low = Math.min(one, other);
    int high = Math.max(one, other);
    int ahead = high - low;
    if (2 * ahead <= n) {
      pair[ahead - 1][low] *= factor;
    } else {
      pair[n - ahead - 1][high] *= factor;
    }
  }

  /** Multiplies each weight by fixed + slope·∏ misses over the causes of its hypothesis. */
  void multiply(double fixed, double slope, double[] misses) {
    double[] ahead = new double[single.length];
    double[] twice = twice(misses);
    nothing *= fixed + slope;
    for (int i = 0; i < ahead.length; i++) {
      single[i] *= fixed + slope * misses[i];
    }
    for (int d = 1; d <= pair.length; d++) {
      System.arraycopy(twice, d, ahead, 0, ahead.length);
      multiply(pair[d - 1], fixed, slope, misses, ahead);
    }
  }

  private static void multiply(
      double[] row, double fixed, double slope, double[] misses, double[] ahead) {
    for (int i = 0; i < row.length; i++) {
      row[i] *= fixed + slope * misses[i] * ahead[i];
    }
  }

  /** The opposite of {@link #multiply}, into another set of weights. */
  void divide(double fixed, double slope, double[] misses, Weights into) {
    double[] ahead = new double[single.length];
    double[] twice = twice(misses);
    into.nothing = nothing / (fixed + slope);
    for (int i = 0; i < ahead.length; i++) {
      into.single[i] = single[i] / (fixed + slope * misses[i]);
    }
    for (int d = 1; d <= pair.length; d++) {
      System.arraycopy(twice, d, ahead, 0, ahead.length);
      divide(pair[d - 1], fixed, slope, misses, ahead, into.pair[d - 1]);
    }
  }

  private static void divide(
      double[] row, double fixed, double slope, double[] misses, double[] ahead, double[] into) {
    for (int i = 0; i < row.length; i++) {
      into[i] = row[i] / (fixed + slope * misses[i] * ahead[i]);
    }
  }

  /** Sum of the weights of all hypotheses that hold each cause. */
  double[] marginals() {
    int n = single.length;
    double[] sums = single.clone();
    double[] others = new double[2 * n];
    double[] ahead = new double[n];
    for (int d = 1; d <= pair.length; d++) {
      add(pair[d - 1], sums);
      System.arraycopy(others, d, ahead, 0, n);
      add(pair[d - 1], ahead);
      System.arraycopy(ahead, 0, others, d, n);
    }
    for (int i = 0; i < n; i++) {
      sums[i] += others[i] + others[i + n];
    }
    return sums;
  }

  private static void add(double[] row, double[] sums) {
    for (int i = 0; i < row.length; i++) {
      sums[i] += row[i];
    }
  }

  /** Sum of all weights; the marginals hold each single once and each pair twice. */
  double total(double[] marginals) {
    double sum = 0;
    for (int i = 0; i < marginals.length; i++) {
      sum += marginals[i] + single[i];
    }
    return nothing + sum / 2;
  }

  /**
   * Scales the weights to sum 1 and returns the marginals that belong to them.
   *
   * @throws ImpossibleObservations if every weight is 0
   */
  double[] normalize() {
    double[] marginals = marginals();
    double total = total(marginals);
    if (!(total > 0)) {
      throw new ImpossibleObservations();
    }
    nothing /= total;
    divide(single, total);
    for (double[] row : pair) {
      divide(row, total);
    }
    for (int i = 0; i < marginals.length; i++) {
      // Rounding in the sums must not make a cause more than certain.
      marginals[i] = Math.min(1, marginals[i] / total);
    }
    return marginals;
  }

  private static void divide(double[] row, double total) {
    for (int i = 0; i < row.length; i++) {
      row[i] /= total;
    }
  }
}
