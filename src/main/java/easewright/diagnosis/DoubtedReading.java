package easewright.diagnosis;

import easewright.diagnosis.Answer.QuestionNote;
import easewright.inference.Posterior;
import easewright.inference.Question;
import easewright.inference.Questions;
import easewright.rulebook.Catalog.SignEntry;
import java.util.List;
import java.util.Optional;

/**
 * The sign that the likeliest cause hangs on most, of those that a text perhaps meant. While there
 * is one, no cause is clear, and the first question asks whether the text was read right.
 */
final class DoubtedReading {
  private final Knowledge knowledge;
  private final SignEntry sign;
  private final Posterior without;

  private DoubtedReading(Knowledge knowledge, SignEntry sign, Posterior without) {
    this.knowledge = knowledge;
    this.sign = sign;
    this.without = without;
  }

  /** The doubted reading, if leaving one out changes how likely the likeliest cause is. */
  static Optional<DoubtedReading> of(
      Knowledge knowledge, Posterior posterior, List<Report> reports) {
    String first = posterior.first();
    double most = knowledge.parameter("doubted-reading-moves");
    DoubtedReading found = null;
    for (Report report : reports) {
      if (report.sure() < knowledge.parameter("reading-doubted-below")) {
        Posterior without = posterior.without(report.observation());
        double moved = Math.abs(posterior.probability(first) - without.probability(first));
        if (moved >= most) {
          most = moved;
          SignEntry sign = knowledge.catalog().signs().get(report.observation().sign());
          found = new DoubtedReading(knowledge, sign, without);
        }
      }
    }
    return Optional.ofNullable(found);
  }

  /** Asks whether the sign was meant. */
  QuestionNote question(Asking asking) {
    Question question = Questions.rank(without, List.of(knowledge.ask(sign)), 1).get(0);
    String words = knowledge.source().wording().say("confirm-reading", "ask", sign.ask());
    return asking.note(question, words, true);
  }
}
