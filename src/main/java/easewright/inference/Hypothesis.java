package easewright.inference;

import java.util.List;

/**
 * One complete story: nothing wrong, one cause, or two at once.
 *
 * @param causes ids of its causes, in alphabetical order; empty for "nothing wrong"
 * @param probability 0 to 1; over all hypotheses the sum is 1
 */
public record Hypothesis(List<String> causes, double probability) {

  /** Copies the list, so the record cannot change afterwards. */
  public Hypothesis {
    causes = List.copyOf(causes);
  }
}
