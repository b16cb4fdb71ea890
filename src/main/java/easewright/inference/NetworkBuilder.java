package easewright.inference;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Gathers causes, signs and links of a {@link Network}, in any order; not for use by several
 * threads.
 */
public final class NetworkBuilder {
  private final TreeMap<String, Double> priors = new TreeMap<>();
  private final TreeMap<String, Double> leaks = new TreeMap<>();
  private final TreeMap<String, Map<String, Double>> strengths = new TreeMap<>();
  private OptionalDouble nothingWrong = OptionalDouble.empty();

  NetworkBuilder() {}

  /**
   * @param prior probability of the cause before anything is observed, between 0 and 1, both
   *     excluded
   */
  public NetworkBuilder cause(String id, double prior) {
    require(prior > 0 && prior < 1, "The prior of %s must lie between 0 and 1.", id);
    require(priors.put(id, prior) == null, "The cause %s is given twice.", id);
    return this;
  }

  /**
   * @param leak probability of the sign when no cause is at work, at least 0 and below 1. A leak of
   *     0 makes the sign a proof that something is wrong.
   */
  public NetworkBuilder sign(String id, double leak) {
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
  public NetworkBuilder nothingWrong(double share) {
    require(share > 0 && share < 1, "The share of %s must lie between 0 and 1.", "nothing wrong");
    this.nothingWrong = OptionalDouble.of(share);
    return this;
  }

  private double[] odds() {
    double[] odds = priors.values().stream().mapToDouble(p -> p / (1 - p)).toArray();
    return nothingWrong.isPresent() ? Priors.leaving(odds, nothingWrong.getAsDouble()) : odds;
  }

  /** Adds a link; each pair of cause and sign at most once. */
  public NetworkBuilder link(String cause, String sign, double strength) {
    Link link = new Link(cause, sign, strength);
    var row = strengths.computeIfAbsent(sign, s -> new HashMap<>());
    require(row.put(cause, link.strength()) == null, "A link from %s is given twice.", cause);
    return this;
  }

  /**
   * @throws IllegalArgumentException if there is no cause, or a link names an unknown cause or sign
   */
  public Network build() {
    require(!priors.isEmpty(), "A network needs at least one cause%s.", "");
    return new Network(priors.navigableKeySet(), odds(), leaks, strengths);
  }

  private static void require(boolean holds, String sentence, String id) {
    if (!holds) {
      throw new IllegalArgumentException(sentence.formatted(id));
    }
  }
}
