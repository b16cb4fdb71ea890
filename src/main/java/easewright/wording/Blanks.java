package easewright.wording;

import java.util.Arrays;

/** Values for the named blanks of a sentence. Immutable. */
public final class Blanks {
  /** No values. */
  public static final Blanks NONE = new Blanks(new Object[0]);

  /** Alternating names and values. */
  private final Object[] pairs;

  private Blanks(Object[] pairs) {
    this.pairs = pairs;
  }

  /** One blank. */
  public static Blanks of(String name, Object value) {
    return new Blanks(new Object[] {name, value});
  }

  /** From alternating names and values; for more than two, {@link #and} reads better. */
  public static Blanks ofPairs(Object... pairs) {
    if (pairs.length % 2 != 0) {
      throw new IllegalArgumentException("A blank has a name and a value.");
    }
    return new Blanks(pairs);
  }

  /** These and one more. */
  public Blanks and(String name, Object value) {
    Object[] more = Arrays.copyOf(pairs, pairs.length + 2);
    more[pairs.length] = name;
    more[pairs.length + 1] = value;
    return new Blanks(more);
  }

  /** These and others. */
  public Blanks and(Blanks others) {
    Object[] more = Arrays.copyOf(pairs, pairs.length + others.pairs.length);
    System.arraycopy(others.pairs, 0, more, pairs.length, others.pairs.length);
    return new Blanks(more);
  }

  /** Fills the blanks {name} of a sentence; blanks without a value stay as they are. */
  public String fill(String sentence) {
    int open = sentence.indexOf('{');
    if (open < 0 || pairs.length == 0) {
      return sentence;
    }
    StringBuilder said = new StringBuilder(sentence.length() + 32);
    int done = 0;
    while (open >= 0) {
      int close = sentence.indexOf('}', open);
      int value = close < 0 ? -1 : value(sentence, open + 1, close);
      if (value >= 0) {
        said.append(sentence, done, open).append(pairs[value]);
        done = close + 1;
      }
      open = sentence.indexOf('{', Math.max(open + 1, done));
    }
    return said.append(sentence, done, sentence.length()).toString();
  }

  private int value(String sentence, int from, int to) {
    for (int i = 0; i < pairs.length; i += 2) {
      String name = (String) pairs[i];
      if (name.length() == to - from && sentence.startsWith(name, from)) {
        return i + 1;
      }
    }
    return -1;
  }
}
