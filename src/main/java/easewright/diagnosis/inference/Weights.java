package easewright.diagnosis.inference;

/**
 * Weights of all hypotheses, in plain arrays because this is the inner loop.
 *
 * <p>Pairs lie by distance: the pair of causes i and (i + d) mod n is at (d − 1)·n + i, for d = 1 …
 * n/2. So every inner loop runs over n neighbours in memory, and the compiler turns it into vector
 * instructions; rows of per-cause numbers are stored twice over, which spares the "mod n".
 */
final class Weights {
  double nothing;
  final double[] single;
  final double[] pair;

  private Weights(double nothing, double[] single, double[] pair) {
    this.nothing = nothing;
    this.single = single;
    this.pair = pair;
  }

  /** Weights in proportion to the prior of each hypothesis; the odds p/(1 − p) are per cause. */
  static Weights prior(double[] odds) {
    int n = odds.length;
    var weights = new Weights(1, odds.clone(), new double[n * (n - 1) / 2]);
    for (int k = 0; k < weights.pair.length; k++) {
      weights.pair[k] = odds[weights.one(k)] * odds[weights.other(k)];
    }
    weights.normalize();
    return weights;
  }

  Weights copy() {
    return new Weights(nothing, single.clone(), pair.clone());
  }

  int one(int k) {
    return k % single.length;
  }

  int other(int k) {
    return (k % single.length + k / single.length + 1) % single.length;
  }

  /** Place of the pair of two different causes. */
  int place(int a, int b) {
    int n = single.length;
    int ahead = b > a ? b - a : b - a + n;
    boolean fromA = 2 * ahead < n || (2 * ahead == n && a < b);
    return fromA ? (ahead - 1) * n + a : (n - ahead - 1) * n + b;
  }

  /** Multiplies each weight by fixed + slope·∏ misses over the causes of its hypothesis. */
  void multiply(double fixed, double slope, double[] misses) {
    int n = single.length;
    nothing *= fixed + slope;
    for (int i = 0; i < n; i++) {
      single[i] *= fixed + slope * misses[i];
    }
    for (int d = 1, base = 0; base < pair.length; d++, base += n) {
      multiply(base, Math.min(n, pair.length - base), d, fixed, slope, misses);
    }
  }

  private void multiply(int base, int length, int d, double fixed, double slope, double[] misses) {
    for (int i = 0; i < length; i++) {
      pair[base + i] *= fixed + slope * misses[i] * misses[i + d];
    }
  }

  /** The opposite of {@link #multiply}, into another set of weights. */
  void divide(double fixed, double slope, double[] misses, Weights into) {
    int n = single.length;
    into.nothing = nothing / (fixed + slope);
    for (int i = 0; i < n; i++) {
      into.single[i] = single[i] / (fixed + slope * misses[i]);
    }
    for (int d = 1, base = 0; base < pair.length; d++, base += n) {
      divide(base, Math.min(n, pair.length - base), d, fixed, slope, misses, into.pair);
    }
  }

  private void divide(
      int base, int length, int d, double fixed, double slope, double[] misses, double[] into) {
    for (int i = 0; i < length; i++) {
      into[base + i] = pair[base + i] / (fixed + slope * misses[i] * misses[i + d]);
    }
  }

  /** Sum of the weights of all hypotheses that hold each cause. */
  double[] marginals() {
    int n = single.length;
    double[] sums = new double[2 * n];
    System.arraycopy(single, 0, sums, 0, n);
    for (int d = 1, base = 0; base < pair.length; d++, base += n) {
      int length = Math.min(n, pair.length - base);
      add(base, length, sums, 0);
      add(base, length, sums, d);
    }
    double[] folded = new double[n];
    for (int i = 0; i < n; i++) {
      folded[i] = sums[i] + sums[i + n];
    }
    return folded;
  }

  private void add(int base, int length, double[] sums, int from) {
    for (int i = 0; i < length; i++) {
      sums[from + i] += pair[base + i];
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
    double scale = 1 / total;
    nothing *= scale;
    for (int i = 0; i < single.length; i++) {
      single[i] *= scale;
      // Rounding must not make a certainty more than certain.
      marginals[i] = Math.min(1, marginals[i] * scale);
    }
    for (int k = 0; k < pair.length; k++) {
      pair[k] *= scale;
    }
    return marginals;
  }
}
