package easewright.english;

import java.util.List;

/**
 * How many breaks and how many words of meaning stand before each word, so that what lies between
 * two words is known without walking there.
 */
public final class WordGaps {
  private static final Break[] BREAKS = Break.values();

  /** By strength: how many breaks as strong or stronger stand up to and with a word. */
  private final int[][] breaksUpTo;

  /** How many words that mean something stand before a word. */
  private final int[] meaningBefore;

  /** The words that mean something. */
  private final int[] meaning;

  /**
   * @param means for each word whether it means something
   */
  public WordGaps(List<Break> breaks, boolean[] means) {
    int size = breaks.size();
    breaksUpTo = new int[BREAKS.length][size + 1];
    meaningBefore = new int[size + 1];
    for (int i = 0; i < size; i++) {
      for (int strength = 0; strength < BREAKS.length; strength++) {
        int here = breaks.get(i).ordinal() >= strength ? 1 : 0;
        breaksUpTo[strength][i + 1] = breaksUpTo[strength][i] + here;
      }
      meaningBefore[i + 1] = meaningBefore[i] + (means[i] ? 1 : 0);
    }
    meaning = new int[meaningBefore[size]];
    for (int i = 0; i < size; i++) {
      if (means[i]) {
        meaning[meaningBefore[i]] = i;
      }
    }
  }

  /** The strongest break after one word and up to another. */
  public Break strongest(int after, int upTo) {
    for (int strength = BREAKS.length - 1; strength > 0 && after < upTo; strength--) {
      if (breaksUpTo[strength][upTo + 1] > breaksUpTo[strength][after + 1]) {
        return BREAKS[strength];
      }
    }
    return Break.NONE;
  }

  /** How many words from one to another, both included, mean something. */
  public int meaning(int first, int last) {
    return first > last ? 0 : meaningBefore[last + 1] - meaningBefore[first];
  }

  /** The first word from which no more than so many words of meaning lead up to a word. */
  public int firstWithin(int most, int word) {
    int index = meaningBefore[word + 1] - most - 1;
    return index < 0 ? 0 : meaning[index];
  }

  /** The last word up to which no more than so many words of meaning follow a word. */
  public int lastWithin(int most, int word) {
    int index = meaningBefore[word + 1] + most;
    return index >= meaning.length ? meaningBefore.length - 2 : meaning[index] - 1;
  }

  /** The first word of a numbered stretch, or of the first after it. */
  public static int firstOf(int number, int[] numbers) {
    int low = 0;
    int high = numbers.length;
    while (low < high) {
      int middle = (low + high) / 2;
      if (numbers[middle] < number) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The words numbered as this word is. */
  public static Stretch stretch(int word, int[] numbers) {
    return new Stretch(firstOf(numbers[word], numbers), firstOf(numbers[word] + 1, numbers) - 1);
  }
}
