package easewright.inference;

import easewright.inference.Question.Ask;
import easewright.inference.Question.Outlook;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;

/**
 * The next best questions: the expected drop of entropy, H(D) − Σ P(answer)·H(D | answer), per
 * effort of asking (Sent and van der Gaag 2007, AIME). It is computed from the other end, as the
 * entropy of the answer less its mean entropy once the hypothesis is known, which is the same
 * number (mutual information is symmetric): the mean needs nothing but the weights and what the
 * network keeps of each sign ({@link AnswerNoise}).
 */
public final class Questions {
  private static final int CAUSES_SHOWN = 3;

  private final Posterior posterior;
  private final double least;

  private Questions(Posterior posterior) {
    this.posterior = posterior;
    List<CauseProbability> first = posterior.causes(CAUSES_SHOWN);
    this.least = first.get(first.size() - 1).probability();
  }

  /**
   * Ranks questions by bits per effort, best first; equals in the order given.
   *
   * @param asks signs not yet observed
   * @param atMost how many questions to return
   * @throws IllegalArgumentException if a sign is unknown to the network or already observed
   */
  public static List<Question> rank(Posterior posterior, Collection<Ask> asks, int atMost) {
    var observed = new HashSet<String>();
    posterior.observations().forEach(seen -> observed.add(seen.sign()));
    for (Ask ask : asks) {
      if (observed.contains(ask.sign())) {
        throw new IllegalArgumentException("%s is already observed.".formatted(ask.sign()));
      }
    }
    var questions = new Questions(posterior);
    var ranked = new ArrayList<Question>(asks.size());
    asks.forEach(ask -> ranked.add(new Question(ask, questions.bits(ask), questions)));
    ranked.sort(Comparator.comparingDouble(question -> -question.worth()));
    return List.copyOf(ranked.subList(0, Math.min(atMost, ranked.size())));
  }

  /** As if a "no" were trusted like a "yes": the ranking hardly depends on the difference. */
  private double bits(Ask ask) {
    Network network = posterior.network();
    Weights weights = posterior.weights();
    int sign = network.sign(ask.sign());
    AnswerNoise answer = network.noise(sign, ask.answered(true));
    int[] linked = network.linked(sign);
    double[] alone = new double[linked.length];
    double unlinked = 1;
    double yes = 0;
    double noise = 0;
    int k = 0;
    for (int a = 0; a < linked.length; a++) {
      alone[a] += posterior.marginals()[linked[a]];
      for (int b = a + 1; b < linked.length; b++, k++) {
        double p = weights.pair(linked[a], linked[b]);
        alone[a] -= p;
        alone[b] -= p;
        unlinked -= p;
        yes += p * answer.yes(k);
        noise += p * answer.nats(k);
      }
      double p = Math.max(0, alone[a]);
      unlinked -= p;
      yes += p * answer.yes(k);
      noise += p * answer.nats(k++);
    }
    double p = Math.max(0, unlinked);
    yes += p * answer.yes(k);
    noise += p * answer.nats(k);
    return Math.max(0, AnswerNoise.nats(Math.min(1, yes)) - noise) / Math.log(2);
  }

  /** What one answer would leave. */
  Outlook outlook(Ask ask, boolean present) {
    Network network = posterior.network();
    Observation answer = ask.answered(present);
    Reweighing after = Reweighing.of(posterior, null, answer);
    if (after == null) {
      return weighedAnew(answer);
    }
    return new Outlook(
        Math.min(1, after.total()),
        after.nothing(),
        Posterior.leading(network, after.marginals(least), CAUSES_SHOWN));
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
}
