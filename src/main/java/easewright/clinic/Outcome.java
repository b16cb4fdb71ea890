package easewright.clinic;

import java.util.List;

/** What became of a round's advice. */
public enum Outcome {
  SOLVED,
  BETTER,
  SAME,
  WORSE;

  boolean isProgress() {
    return this == SOLVED || this == BETTER;
  }

  /** How many of the outcomes at the end of a list, oldest first, brought no progress. */
  static int withoutProgress(List<Outcome> outcomes) {
    int count = 0;
    for (Outcome outcome : outcomes) {
      count = outcome.isProgress() ? 0 : count + 1;
    }
    return count;
  }
}
