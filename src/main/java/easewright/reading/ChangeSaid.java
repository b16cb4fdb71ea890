package easewright.reading;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What a sentence tells of changes that were tried or made, as probabilities. Immutable. */
public final class ChangeSaid {
  private static final String DONE = "done";
  private static final String UNDONE = "undone";

  /** What a change may have done. */
  static final List<String> OUTCOMES = List.of("right", "better", "same", "worse");

  /** The last columns of the model's output; those before are the changes. */
  private static final int OTHERS = 2 + OUTCOMES.size();

  private final List<String> columns;
  private final float[] row;

  /**
   * One row of the model's output.
   *
   * @param columns names of the columns, for which {@link #areColumns} holds
   * @param row not copied
   */
  ChangeSaid(List<String> columns, float[] row) {
    this.columns = columns;
    this.row = row;
  }

  /** Whether these may be the columns of a model. */
  static boolean areColumns(List<String> columns) {
    int first = columns.size() - OTHERS;
    return first > 0
        && columns.get(first).equals(DONE)
        && columns.get(first + 1).equals(UNDONE)
        && columns.subList(first + 2, columns.size()).equals(OUTCOMES);
  }

  /** Whether any change was done. */
  double done() {
    return row[columns.size() - OTHERS];
  }

  /** Whether a change was taken back. */
  double undone() {
    return row[columns.size() - OTHERS + 1];
  }

  /** Whether it tells that a change did this. */
  double outcome(String outcome) {
    return row[columns.size() - OUTCOMES.size() + OUTCOMES.indexOf(outcome)];
  }

  /** By change, whether this one was done. */
  Map<String, Double> changes() {
    Map<String, Double> changes = new HashMap<>();
    for (int i = 0; i < columns.size() - OTHERS; i++) {
      changes.put(columns.get(i), (double) row[i]);
    }
    return changes;
  }
}
