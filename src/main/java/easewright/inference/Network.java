package easewright.inference;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.stream.IntStream;

/**
 * An immutable leaky noisy-OR network: P(sign present | causes) = 1 − (1 − leak)·∏(1 − strength),
 * the product over the causes at work (Jaakkola and Jordan 1999, JAIR 10). Safe to share between
 * threads.
 */
public final class Network {
  private final List<String> causes;
  private final List<String> signs;
  private final Map<String, Integer> causeIndex;
  private final Map<String, Integer> signIndex;
  private final Weights prior;
  private final double[] silence;
  private final double[][] misses;
  private final int[][] linked;
  private final double[] leastMissed;
  private final AnswerNoise[] noise;

  /**
   * Alphabetical order makes every sum independent of the order of declaration, to the last bit.
   *
   * @param causes ids of the causes
   * @param odds of each cause before anything is observed, in the same order
   * @param leaks of each sign
   * @param strengths of the links, by sign and cause
   */
  Network(
      SortedSet<String> causes,
      double[] odds,
      SortedMap<String, Double> leaks,
      Map<String, Map<String, Double>> strengths) {
    this.causes = List.copyOf(causes);
    signs = List.copyOf(leaks.keySet());
    causeIndex = index(this.causes);
    signIndex = index(signs);
    prior = Weights.prior(odds);
    silence = leaks.values().stream().mapToDouble(leak -> 1 - leak).toArray();
    misses = new double[signs.size()][];
    for (int s = 0; s < misses.length; s++) {
      misses[s] = new double[causes.size()];
      Arrays.fill(misses[s], 1);
    }
    strengths.forEach(
        (sign, row) ->
            row.forEach((cause, strength) -> set(misses[sign(sign)], cause(cause), strength)));
    linked = Arrays.stream(misses).map(Network::linked).toArray(int[][]::new);
    leastMissed =
        IntStream.range(0, misses.length).mapToDouble(s -> least(misses[s], linked[s])).toArray();
    noise = new AnswerNoise[misses.length];
  }

  private Network(
      Network from, double[][] misses, int[][] linked, double[] leastMissed, AnswerNoise[] noise) {
    this.causes = from.causes;
    this.signs = from.signs;
    this.causeIndex = from.causeIndex;
    this.signIndex = from.signIndex;
    this.prior = from.prior;
    this.silence = from.silence;
    this.misses = misses;
    this.linked = linked;
    this.leastMissed = leastMissed;
    this.noise = noise;
  }

  /** Starts an empty network. */
  public static NetworkBuilder builder() {
    return new NetworkBuilder();
  }

  /**
   * The same network with some links replaced or added; only the rows of signs named here are
   * copied.
   *
   * @throws IllegalArgumentException if a cause or sign is not in the network, or the same link is
   *     given twice
   */
  public Network with(Collection<Link> links) {
    double[][] rows = misses.clone();
    var given = new BitSet(signs.size() * causes.size());
    for (Link link : links) {
      int sign = sign(link.sign());
      int cause = cause(link.cause());
      int at = sign * causes.size() + cause;
      if (given.get(at)) {
        throw new IllegalArgumentException(
            "The link from %s to %s is given twice.".formatted(link.cause(), link.sign()));
      }
      given.set(at);
      if (rows[sign] == misses[sign]) {
        rows[sign] = misses[sign].clone();
      }
      set(rows[sign], cause, link.strength());
    }
    int[][] linkedToRows = linked.clone();
    double[] leastOfRows = leastMissed.clone();
    AnswerNoise[] noiseOfRows = noise.clone();
    for (int s = 0; s < rows.length; s++) {
      if (rows[s] != misses[s]) {
        linkedToRows[s] = linked(rows[s]);
        leastOfRows[s] = least(rows[s], linkedToRows[s]);
        noiseOfRows[s] = null;
      }
    }
    return new Network(this, rows, linkedToRows, leastOfRows, noiseOfRows);
  }

  /** Ids of the causes, in alphabetical order. */
  public List<String> causes() {
    return causes;
  }

  /** Ids of the signs, in alphabetical order. */
  public List<String> signs() {
    return signs;
  }

  /** Strength of the link, 0 to 1; 0 where the cause doesn't bear on the sign. */
  public double strength(String cause, String sign) {
    return 1 - misses[sign(sign)][cause(cause)];
  }

  /** Probability, 0 to 1, of the sign when exactly the causes given are at work. */
  public double probability(String sign, Collection<String> atWork) {
    double absent = silence[sign(sign)];
    for (String cause : atWork) {
      absent *= misses[sign(sign)][cause(cause)];
    }
    return 1 - absent;
  }

  int cause(String id) {
    return find(causeIndex, id, "cause");
  }

  int sign(String id) {
    return find(signIndex, id, "sign");
  }

  Weights prior() {
    return prior;
  }

  /** 1 − leak at the degree that was seen. */
  double silence(int sign, Observation seen) {
    return 1 - Math.min(1, (1 - silence[sign]) * seen.leakShare());
  }

  /** 1 − strength for each cause. */
  double[] misses(int sign) {
    return misses[sign];
  }

  /** The causes that bear on a sign, in rising order. */
  int[] linked(int sign) {
    return linked[sign];
  }

  /** The least that is left of the misses of a sign by any two causes. */
  double leastMissed(int sign) {
    return leastMissed[sign];
  }

  /**
   * How a "yes" about a sign would fall, kept from one ask to the next: all are trusted alike.
   * Threads that come first together work it out twice, with the same result.
   */
  AnswerNoise noise(int sign, Observation yes) {
    double slope = yes.slope() * silence(sign, yes);
    AnswerNoise known = noise[sign];
    if (known == null || !known.isFor(yes.fixed(), slope)) {
      known = new AnswerNoise(yes.fixed(), slope, misses[sign], linked[sign]);
      noise[sign] = known;
    }
    return known;
  }

  private static int[] linked(double[] misses) {
    int[] linked = new int[misses.length];
    int count = 0;
    for (int c = 0; c < linked.length; c++) {
      if (misses[c] < 1) {
        linked[count++] = c;
      }
    }
    return Arrays.copyOf(linked, count);
  }

  private static double least(double[] misses, int[] linked) {
    double least = 1;
    double second = 1;
    for (int c : linked) {
      second = Math.min(second, Math.max(least, misses[c]));
      least = Math.min(least, misses[c]);
    }
    return least * second;
  }

  private static void set(double[] row, int cause, double strength) {
    row[cause] = 1 - strength;
  }

  private static int find(Map<String, Integer> index, String id, String kind) {
    Integer at = index.get(id);
    if (at == null) {
      throw new IllegalArgumentException("There is no %s called %s.".formatted(kind, id));
    }
    return at;
  }

  private static Map<String, Integer> index(List<String> ids) {
    var index = new HashMap<String, Integer>();
    ids.forEach(id -> index.put(id, index.size()));
    return index;
  }
}
