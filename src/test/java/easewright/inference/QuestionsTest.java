package easewright.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.inference.Question.Ask;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class QuestionsTest {

  /** Sent and van der Gaag 2007, AIME: H(D) − Σ P(answer)·H(D | answer), by plain enumeration. */
  @Property(tries = 1000)
  void the_bits_are_the_expected_drop_of_entropy(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 7);
    var observations = small.observations();
    var posterior = Posterior.infer(small.network(), observations);
    double trust = 0.55 + 0.45 * Math.abs(seed % 10) / 9;
    for (Question question : all(small, observations, trust)) {
      double expected = small.plain(2).bits(observations, question.sign(), trust);
      assertEquals(expected, question.bits(), 1e-8);
      assertTrue(question.bits() >= 0 && question.bits() <= posterior.entropy() + 1e-9);
    }
  }

  @Property(tries = 300)
  void the_outlook_is_what_inferring_with_the_answer_gives(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 7);
    var observations = small.observations();
    for (Question question : all(small, observations, 0.9)) {
      assertEquals(1, question.yes().probability() + question.no().probability(), 1e-12);
      for (boolean present : new boolean[] {true, false}) {
        var more = new ArrayList<>(observations);
        var answer = new Observation(question.sign(), present, 0.9);
        more.add(answer);
        var outlook = present ? question.yes() : question.no();
        var plain = small.plain(2);
        double probability =
            plain.posterior(observations).stream()
                .mapToDouble(w -> w.probability() * plain.report(answer, w.causes()))
                .sum();
        assertEquals(probability, outlook.probability(), 1e-10);
        var after = plain.posterior(more);
        double nothing =
            after.stream().filter(w -> w.causes().isEmpty()).findFirst().get().probability();
        assertEquals(nothing, outlook.nothing(), 1e-10);
        for (CauseProbability cause : outlook.causes()) {
          assertEquals(PlainEvaluator.marginal(after, cause.cause()), cause.probability(), 1e-10);
        }
        assertEquals(Math.min(3, small.priors.size()), outlook.causes().size());
      }
    }
  }

  @Property(tries = 200)
  void a_sign_no_cause_bears_on_is_worth_nothing(@ForAll long seed) {
    var small = new RandomNetworks(seed, 6, 6);
    small.leaks.put("unlinked", 0.3);
    var posterior = Posterior.infer(small.network(), List.of());
    var question = Questions.rank(posterior, List.of(new Ask("unlinked", 1, 0.9)), 1).get(0);
    assertEquals(0, question.bits(), 1e-14);
    assertEquals(0.9 * 0.3 + 0.1 * 0.7, question.yes().probability(), 1e-12);
  }

  /** A fair question with a certain answer is worth one bit; effort divides it (computed). */
  @Test
  void
      a_question_that_halves_the_hypotheses_is_worth_one_bit_and_less_per_effort_if_it_is_harder() {
    Network network =
        Network.builder()
            .cause("a", 0.5)
            .sign("easy", 0)
            .sign("hard", 0)
            .sign("vague", 0.3)
            .link("a", "easy", 1)
            .link("a", "hard", 1)
            .link("a", "vague", 0.3)
            .build();
    var posterior = Posterior.infer(network, List.of());
    var asks = List.of(new Ask("vague", 1, 1), new Ask("hard", 4, 1), new Ask("easy", 1, 1));
    var ranked = Questions.rank(posterior, asks, 2);
    assertEquals(List.of("easy", "hard"), ranked.stream().map(Question::sign).toList());
    assertEquals(1, ranked.get(0).bits(), 1e-12);
    assertEquals(0.25, ranked.get(1).worth(), 1e-12);
    assertEquals(1, ranked.get(0).yes().causes().get(0).probability(), 1e-12);
    assertEquals(1, ranked.get(0).no().nothing(), 1e-12);
  }

  @Test
  void what_is_known_or_makes_no_sense_is_not_asked() {
    Network network = Network.builder().cause("a", 0.5).sign("s", 0.1).build();
    var posterior = Posterior.infer(network, List.of(new Observation("s", true, 1)));
    var empty = Posterior.infer(network, List.of());
    var ask = new Ask("s", 1, 1);
    refused(() -> Questions.rank(posterior, List.of(ask), 1));
    refused(() -> Questions.rank(empty, List.of(new Ask("t", 1, 1)), 1));
    refused(() -> new Ask("s", 0, 1));
    refused(() -> new Ask("s", 1, 0.5));
  }

  private static void refused(Executable step) {
    assertThrows(IllegalArgumentException.class, step);
  }

  private static List<Question> all(
      RandomNetworks small, List<Observation> observations, double trust) {
    var asks = small.unknown(observations).stream().map(s -> new Ask(s, 1, trust)).toList();
    return Questions.rank(Posterior.infer(small.network(), observations), asks, Integer.MAX_VALUE);
  }
}
