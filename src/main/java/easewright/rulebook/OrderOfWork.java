package easewright.rulebook;

import java.util.List;

/**
 * The order in which faults are mended and cautions are given: {@code practice/order.yaml}.
 *
 * @param stages the stages of the work, the first first
 * @param urgency how grave a caution is, the gravest first; the first is a danger
 * @param soon how soon to ask about a danger, the soonest first
 */
public record OrderOfWork(List<Stage> stages, List<Urgency> urgency, List<String> soon) {

  /** A stage of the work, and why it comes where it does. */
  public record Stage(String id, String why, String source) {}

  /** A word for how grave a caution is, and what it means. */
  public record Urgency(String id, String why) {}

  /** The turn of a stage, from 0. */
  public int turn(String stage) {
    for (int i = 0; i < stages.size(); i++) {
      if (stages.get(i).id().equals(stage)) {
        return i;
      }
    }
    throw new RuleBookFault("practice/order.yaml has no stage " + stage + ".");
  }

  /** The turn of a caution by its urgency, from 0 for the gravest. */
  public int gravity(String word) {
    for (int i = 0; i < urgency.size(); i++) {
      if (urgency.get(i).id().equals(word)) {
        return i;
      }
    }
    throw new RuleBookFault("practice/order.yaml has no urgency " + word + ".");
  }

  /** Whether a caution of this urgency is a danger, beside which nothing is advised. */
  public boolean isDanger(String word) {
    return gravity(word) == 0;
  }

  /** The turn of a word for how soon to ask, from 0; after all others where it is null. */
  public int soonness(String word) {
    int turn = word == null ? soon.size() : soon.indexOf(word);
    if (turn < 0) {
      throw new RuleBookFault("practice/order.yaml does not say how soon " + word + " is.");
    }
    return turn;
  }
}
