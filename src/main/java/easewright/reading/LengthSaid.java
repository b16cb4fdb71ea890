package easewright.reading;

import java.util.Arrays;
import java.util.List;

/** Which change a length of a text gives the amount of, and how it counts, as probabilities. */
public final class LengthSaid {
  /** How a length counts towards an amount. */
  public enum Counts {
    /** It is the whole amount. */
    WHOLE,
    /** It is half of it, told of one side or of one layer of a fold. */
    HALF,
    /** It is a quarter of it, such as the depth of a fold at either side. */
    QUARTER,
    /** It is twice the amount, such as a fold across the middle of what is told of either side. */
    TWICE,
    /** The amount is the difference between it and another length. */
    PAIR,
    /** The amount is half of that difference, shared by two sides. */
    TWICE_PAIR,
    /** The amount takes more than this length to work out. */
    OTHER;

    /** Whether it takes another length to tell the amount. */
    public boolean isOfTwo() {
      return this == PAIR || this == TWICE_PAIR;
    }
  }

  /** The first column: it gives the amount of nothing. */
  private static final int FIRST = 1;

  private final TextPlace at;
  private final List<String> changes;
  private final float[] row;

  /**
   * One row of the model's output.
   *
   * @param changes the columns after the first, before how it counts
   * @param row not copied
   */
  LengthSaid(TextPlace at, List<String> changes, float[] row) {
    this.at = at;
    this.changes = changes;
    this.row = row;
  }

  /** Number of columns of a model that knows so many changes. */
  static int columns(int changes) {
    return FIRST + changes + Counts.values().length;
  }

  /** Where the length stands in the text. */
  public TextPlace at() {
    return at;
  }

  /** How probably it gives the amount of a change; 0 for one that the model does not know. */
  public double of(String change) {
    int place = changes.indexOf(change);
    return place < 0 ? 0 : row[FIRST + place];
  }

  /** How probably it gives the amount of any change. */
  public double ofAny() {
    return 1 - row[0];
  }

  /** How it most probably counts. */
  public Counts counts() {
    int from = FIRST + changes.size();
    return Arrays.stream(Counts.values())
        .reduce((one, two) -> row[from + one.ordinal()] >= row[from + two.ordinal()] ? one : two)
        .orElseThrow();
  }
}
