package easewright.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What a sentence asks, as probabilities. Immutable. */
public final class QuestionsSaid {
  /** A sentence of which the model reads no questions. */
  static final QuestionsSaid NONE = new QuestionsSaid(List.of(), new float[0]);

  private static final char ABOUT = ':';

  private final List<String> columns;
  private final float[] row;

  /**
   * A question that a sentence asks.
   *
   * @param kind "do", "size", ...; "change" asks whether to make the change {@code about}
   * @param about what it is about, such as "larger"; null where the kind says it all
   * @param probability from 0 to 1
   */
  public record QuestionSaid(String kind, String about, double probability) {}

  /**
   * One row of the model's output.
   *
   * @param columns what each is the probability of: "do", "size:larger"
   * @param row not copied
   */
  QuestionsSaid(List<String> columns, float[] row) {
    this.columns = columns;
    this.row = row;
  }

  /** Whether the model reads questions. */
  public boolean areRead() {
    return !columns.isEmpty();
  }

  /** The questions that are at least so probable, the most probable first. */
  public List<QuestionSaid> asked(double least) {
    List<QuestionSaid> asked = new ArrayList<>();
    for (int i = 0; i < row.length; i++) {
      if (row[i] >= least) {
        String column = columns.get(i);
        int mark = column.indexOf(ABOUT);
        String kind = mark < 0 ? column : column.substring(0, mark);
        String about = mark < 0 ? null : column.substring(mark + 1);
        asked.add(new QuestionSaid(kind, about, row[i]));
      }
    }
    asked.sort(Comparator.comparingDouble(QuestionSaid::probability).reversed());
    return asked;
  }
}
