package easewright.inference;

/**
 * How likely each answer about one sign is once the causes at work are known: the probability of
 * "yes", and the entropy that is left in the answer, in nats. Both depend on the links alone, so a
 * network works them out once. Combinations of linked causes come in this order: of each cause
 * first its pairs with those after it, then the cause alone; none of them comes last.
 */
final class AnswerNoise {
  private final double fixed;
  private final double slope;
  private final double[] yes;
  private final double[] nats;

  /**
   * @param fixed as in {@link Observation#fixed}, of a "yes"
   * @param slope as in {@link Observation#slope}, times 1 − leak
   * @param misses 1 − strength for each cause
   * @param linked the causes that bear on the sign
   */
  AnswerNoise(double fixed, double slope, double[] misses, int[] linked) {
    this.fixed = fixed;
    this.slope = slope;
    int n = linked.length;
    yes = new double[1 + n + n * (n - 1) / 2];
    nats = new double[yes.length];
    int k = 0;
    for (int a = 0; a < n; a++) {
      for (int b = a + 1; b < n; b++) {
        set(k++, misses[linked[a]] * misses[linked[b]]);
      }
      set(k++, misses[linked[a]]);
    }
    set(k, 1);
  }

  private void set(int number, double missed) {
    yes[number] = fixed + slope * missed;
    nats[number] = nats(yes[number]);
  }

  boolean isFor(double otherFixed, double otherSlope) {
    return fixed == otherFixed && slope == otherSlope;
  }

  /** Probability of "yes" given a combination. */
  double yes(int number) {
    return yes[number];
  }

  /** Entropy of the answer given a combination, nats. */
  double nats(int number) {
    return nats[number];
  }

  /** Entropy of an answer that is "yes" with this probability, nats. */
  static double nats(double q) {
    return q > 0 && q < 1 ? -q * Math.log(q) - (1 - q) * Math.log(1 - q) : 0;
  }
}
