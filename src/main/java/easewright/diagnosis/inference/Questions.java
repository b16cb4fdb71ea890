package easewright.diagnosis.inference;

import easewright.diagnosis.inference.Question.Ask;
import easewright.diagnosis.inference.Question.Outlook;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;

/**
 * The next best questions: the expected drop of entropy, H(D) − Σ P(answer)·H(D | answer), per
 * effort of asking (Sent and van der Gaag 2007, AIME). It is computed from the other end, as the
 * entropy of the answer less its mean entropy once the hypothesis is known, which is the same
 * number (mutual information is symmetric) but needs one logarithm per combination of linked
 * causes.
 */
public final class Questions {
  private static final int CAUSES_SHOWN = 3;

  /** Probabilities nearer than this part of themselves are equal. */
  private static final double TIE = 1e-9;

  private final Posterior posterior;
  private final double threshold;

  private Questions(Posterior posterior, double ignoredMass) {
    this.posterior = posterior;
    this.threshold = threshold(posterior.weights(), ignoredMass);
  }

  /**
   * Ranks questions by bits per effort, best first; equals in the order given.
   *
   * @param asks signs not yet observed
   * @param ignoredMass probability, 0 to below 1, of the least probable pairs whose answers are
   *     lumped together; no value falls short of the exact one by more than this many bits
   * @param atMost how many questions to return
   * @throws IllegalArgumentException if a sign is unknown to the network or already observed
   */
  public static List<Question> rank(
      Posterior posterior, Collection<Ask> asks, double ignoredMass, int atMost) {
    if (!(ignoredMass >= 0 && ignoredMass < 1)) {
      throw new IllegalArgumentException(
          "The ignored mass must be at least 0 and below 1, not %s.".formatted(ignoredMass));
    }
    var observed = new HashSet<String>();
    posterior.observations().forEach(seen -> observed.add(seen.sign()));
    for (Ask ask : asks) {
      if (observed.contains(ask.sign())) {
        throw new IllegalArgumentException("%s is already observed.".formatted(ask.sign()));
      }
    }
    var questions = new Questions(posterior, ignoredMass);
    record Valued(Ask ask, double bits) {}
    var valued = new ArrayList<Valued>(asks.size());
    asks.forEach(ask -> valued.add(new Valued(ask, questions.bits(ask))));
    valued.sort(Comparator.comparingDouble(v -> -v.bits() / v.ask().effort()));
    return valued.stream().limit(atMost).map(v -> questions.question(v.ask(), v.bits())).toList();
  }

  /**
   * Largest power of two such that the pairs below it weigh at most the ignored mass: found from
   * the sums per binary exponent, which spares sorting a few thousand weights.
   */
  private static double threshold(Weights weights, double ignoredMass) {
    double[] sums = new double[1 - Double.MIN_EXPONENT + 2];
    for (double[] row : weights.pairs()) {
      for (double w : row) {
        sums[Math.max(0, Math.getExponent(w) - Double.MIN_EXPONENT + 1)] += w;
      }
    }
    double below = 0;
    int exponent = Double.MIN_EXPONENT - 1;
    while (exponent < 0 && below + sums[exponent - Double.MIN_EXPONENT + 1] <= ignoredMass) {
      below += sums[exponent - Double.MIN_EXPONENT + 1];
      exponent++;
    }
    return exponent < Double.MIN_EXPONENT ? 0 : Math.scalb(1.0, exponent);
  }

  /** As if a "no" were trusted like a "yes": the ranking hardly depends on the difference. */
  private double bits(Ask ask) {
    Network network = posterior.network();
    Weights weights = posterior.weights();
    int sign = network.sign(ask.sign());
    double[] misses = network.misses(sign);
    Observation yes = ask.answered(true);
    double fixed = yes.fixed();
    double slope = yes.slope() * network.silence(sign);
    int[] linked = network.linked(sign);

    var answer = new AnswerEntropy();
    double[] alone = new double[linked.length];
    double unlinked = 1;
    for (int a = 0; a < linked.length; a++) {
      alone[a] += posterior.marginals()[linked[a]];
      for (int b = a + 1; b < linked.length; b++) {
        double p = weights.pair(linked[a], linked[b]);
        alone[a] -= p;
        alone[b] -= p;
        unlinked -= p;
        double q = fixed + slope * misses[linked[a]] * misses[linked[b]];
        if (p < threshold) {
          answer.lump(p, q);
        } else {
          answer.add(p, q);
        }
      }
      double p = Math.max(0, alone[a]);
      unlinked -= p;
      answer.add(p, fixed + slope * misses[linked[a]]);
    }
    answer.add(Math.max(0, unlinked), fixed + slope);
    return answer.informationInBits();
  }

  private Question question(Ask ask, double bits) {
    return new Question(ask.sign(), bits, ask.effort(), outlook(ask, true), outlook(ask, false));
  }

  private Outlook outlook(Ask ask, boolean present) {
    Network network = posterior.network();
    Observation answer = ask.answered(present);
    Reweighing after = Reweighing.of(posterior, null, answer);
    if (after == null) {
      return weighedAnew(answer);
    }
    List<CauseProbability> leading =
        Posterior.leading(network, after.marginals(), CAUSES_SHOWN + 1);
    return tied(leading)
        ? weighedAnew(answer)
        : new Outlook(
            Math.min(1, after.total()),
            after.nothing(),
            leading.subList(0, Math.min(CAUSES_SHOWN, leading.size())));
  }

  /** Where causes are equal but for rounding, one way of summing must always order them. */
  private static boolean tied(List<CauseProbability> leading) {
    for (int i = 1; i < leading.size(); i++) {
      double before = leading.get(i - 1).probability();
      if (before - leading.get(i).probability() <= TIE * before) {
        return true;
      }
    }
    return false;
  }

  private Outlook weighedAnew(Observation answer) {
    Weights after = posterior.weights().copy();
    Posterior.apply(posterior.network(), answer, after);
    double[] marginals = after.marginals();
    double probability = after.total(marginals);
    if (!(probability > 0)) {
      return new Outlook(0, 0, List.of());
    }
    marginals = after.normalize();
    return new Outlook(
        Math.min(1, probability),
        after.nothing,
        Posterior.leading(posterior.network(), marginals, CAUSES_SHOWN));
  }

  /** Entropy of a yes-or-no answer, and its mean once the hypothesis is known, in nats. */
  private static final class AnswerEntropy {
    private double yes;
    private double noise;
    private double lumped;
    private double lumpedYes;

    void add(double p, double q) {
      yes += p * q;
      noise += p * nats(q);
    }

    /** Puts aside what will count as one hypothesis: entropy is concave, so noise only grows. */
    void lump(double p, double q) {
      lumped += p;
      lumpedYes += p * q;
    }

    double informationInBits() {
      if (lumped > 0) {
        add(lumped, Math.min(1, lumpedYes / lumped));
      }
      return Math.max(0, nats(Math.min(1, yes)) - noise) / Math.log(2);
    }

    private static double nats(double q) {
      return q > 0 && q < 1 ? -q * Math.log(q) - (1 - q) * Math.log(1 - q) : 0;
    }
  }
}
