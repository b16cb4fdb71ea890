package easewright.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What the model makes of the outcome that the words read of a trial. The words may take "equal
 * from left to right" for "no difference"; the model reads the whole sentence.
 */
public final class OutcomesSaid {
  /** From here on the model is sure of an outcome. */
  private static final double SURE = 0.8;

  /** Below this the model does not see the outcome that the words read. */
  private static final double UNSEEN = 0.1;

  /** As many sentences after a trial may tell what it did. */
  private static final int SENTENCES_AFTER = 2;

  private static final String RIGHT = "right";

  private final List<SentenceSaid> all;

  /**
   * @param text as the model reads it
   */
  public OutcomesSaid(TrainedReading text) {
    this.all = text.sentences().stream().filter(one -> one.change() != null).toList();
  }

  /**
   * The outcome of a trial.
   *
   * @param from index of its first character in the text
   * @param to index after its last
   * @param byWords the outcome that the words read, or null
   * @return another where the model is sure of that one and does not see the words'; null where it
   *     sees no failure that the words read, or nothing is told
   */
  public String of(int from, int to, String byWords) {
    List<SentenceSaid> telling = telling(from, to);
    if (telling.isEmpty()) {
      return byWords;
    }
    ToDoubleFunction<String> told = outcome -> told(outcome, telling);
    if (byWords != null && told.applyAsDouble(byWords) >= UNSEEN) {
      return byWords;
    }
    String likeliest =
        ChangeSaid.OUTCOMES.stream().max(Comparator.comparingDouble(told)).orElseThrow();
    if (told.applyAsDouble(likeliest) >= SURE) {
      return likeliest;
    }
    return RIGHT.equals(byWords) ? byWords : null;
  }

  /** The sentences of the trial, and those after it that tell of no other change. */
  private List<SentenceSaid> telling(int from, int to) {
    List<SentenceSaid> telling = new ArrayList<>();
    int after = 0;
    for (SentenceSaid one : all) {
      boolean follows = one.from() >= to;
      if (follows && (after == SENTENCES_AFTER || one.change().done() >= TrialsSaid.DONE)) {
        break;
      }
      if (follows || from < one.to()) {
        telling.add(one);
        after += follows ? 1 : 0;
      }
    }
    return telling;
  }

  private static double told(String outcome, List<SentenceSaid> telling) {
    double missed = 1;
    for (SentenceSaid one : telling) {
      missed *= 1 - one.change().outcome(outcome);
    }
    return 1 - missed;
  }
}
