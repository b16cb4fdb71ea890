package easewright.diagnosis.inference;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

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
  private final AnswerNoise[] noise;

  private Network(Builder builder) {
    // Alphabetical order makes every sum independent of the order of declaration, to the last bit.
    causes = List.copyOf(builder.priors.keySet());
    signs = List.copyOf(builder.leaks.keySet());
    causeIndex = index(causes);
    signIndex = index(signs);
    prior = Weights.prior(builder.odds());
    silence = builder.leaks.values().stream().mapToDouble(leak -> 1 - leak).toArray();
    misses = new double[signs.size()][];
    for (int s = 0; s < misses.length; s++) {
      misses[s] = new double[causes.size()];
      Arrays.fill(misses[s], 1);
    }
    builder.strengths.forEach(
        (sign, row) ->
            row.forEach((cause, strength) -> set(misses[sign(sign)], cause(cause), strength)));
    linked = Arrays.stream(misses).map(Network::linked).toArray(int[][]::new);
    noise = new AnswerNoise[misses.length];
  }

  private Network(Network from, double[][] misses, int[][] linked, AnswerNoise[] noise) {
    this.causes = from.causes;
    this.signs = from.signs;
    this.causeIndex = from.causeIndex;
    this.signIndex = from.signIndex;
    this.prior = from.prior;
    this.silence = from.silence;
    this.misses = misses;
    this.linked = linked;
    this.noise = noise;
  }

  /** Starts an empty network. */
  public static Builder builder() {
    return new Builder();
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
    AnswerNoise[] noiseOfRows = noise.clone();
    for (int s = 0; s < rows.length; s++) {
      if (rows[s] != misses[s]) {
        linkedToRows[s] = linked(rows[s]);
        noiseOfRows[s] = null;
      }
    }
    return new Network(this, rows, linkedToRows, noiseOfRows);
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

  /** 1 − leak. */
  double silence(int sign) {
    return silence[sign];
  }

  /** 1 − strength for each cause. */
  double[] misses(int sign) {
    return misses[sign];
  }

  /** The causes that bear on a sign, in rising order. */
  int[] linked(int sign) {
    return linked[sign];
  }

  /**
   * How a "yes" about a sign would fall, kept from one ask to the next: all are trusted alike.
   * Threads that come first together work it out twice, with the same result.
   */
  AnswerNoise noise(int sign, Observation yes) {
    double slope = yes.slope() * silence[sign];
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

  /** Gathers causes, signs and links, in any order; not for use by several threads. */
  public static final class Builder {
    private final TreeMap<String, Double> priors = new TreeMap<>();
    private final TreeMap<String, Double> leaks = new TreeMap<>();
    private final TreeMap<String, Map<String, Double>> strengths = new TreeMap<>();
    private OptionalDouble nothingWrong = OptionalDouble.empty();

    private Builder() {}

    /**
     * @param prior probability of the cause before anything is observed, between 0 and 1, both
     *     excluded
     */
    public Builder cause(String id, double prior) {
      require(prior > 0 && prior < 1, "The prior of %s must lie between 0 and 1.", id);
      require(priors.put(id, prior) == null, "The cause %s is given twice.", id);
      return this;
    }

    /**
     * @param leak probability of the sign when no cause is at work, at least 0 and below 1. A leak
     *     of 0 makes the sign a proof that something is wrong.
     */
    public Builder sign(String id, double leak) {
      require(leak >= 0 && leak < 1, "The leak of %s must be at least 0 and below 1.", id);
      require(leaks.put(id, leak) == null, "The sign %s is given twice.", id);
      return this;
    }

    /**
     * Scales the odds of all causes together, so that one more cause takes its share from all and
     * leaves "nothing wrong" as likely as it was.
     *
     * @param share probability that nothing is wrong before anything is observed, between 0 and 1,
     *     both excluded; without it the priors stand as they are given
     */
    public Builder nothingWrong(double share) {
      require(share > 0 && share < 1, "The share of %s must lie between 0 and 1.", "nothing wrong");
      this.nothingWrong = OptionalDouble.of(share);
      return this;
    }

    private double[] odds() {
      double[] odds = priors.values().stream().mapToDouble(p -> p / (1 - p)).toArray();
      return nothingWrong.isPresent() ? Priors.leaving(odds, nothingWrong.getAsDouble()) : odds;
    }

    /** Adds a link; each pair of cause and sign at most once. */
    public Builder link(String cause, String sign, double strength) {
      Link link = new Link(cause, sign, strength);
      var row = strengths.computeIfAbsent(sign, s -> new HashMap<>());
      require(row.put(cause, link.strength()) == null, "A link from %s is given twice.", cause);
      return this;
    }

    /**
     * @throws IllegalArgumentException if there is no cause, or a link names an unknown cause or
     *     sign
     */
    public Network build() {
      require(!priors.isEmpty(), "A network needs at least one cause%s.", "");
      return new Network(this);
    }

    private static void require(boolean holds, String sentence, String id) {
      if (!holds) {
        throw new IllegalArgumentException(sentence.formatted(id));
      }
    }
  }
}
