package easewright.clinic;

import java.util.List;

/** The outcome of a round's advice. */
public enum Outcome {
  SOLVED,
  BETTER,
  SAME,
  WORSE;

  boolean isProgress() {
    return this == SOLVED || this == BETTER;
  }

  /** Number of outcomes at the end of a list, oldest first, that brought no progress. */
  static int withoutProgress(List<Outcome> outcomes) {
    int count = 0;
    for (Outcome outcome : outcomes) {
      count = outcome.isProgress() ? 0 : count + 1;
    }
    return count;
  }
}
