package easewright.english;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Mentions in the order of their first words, found by name and by place without looking at the
 * rest of the text.
 */
public final class Mentions implements Iterable<Mention> {
  /** None at all. */
  public static final Mentions NONE = new Mentions(List.of());

  private final List<Mention> all;
  private final int longest;
  private Map<String, Mentions> byName;

  /**
   * @param all in the order of their first words
   */
  public Mentions(List<Mention> all) {
    this.all = List.copyOf(all);
    this.longest = all.stream().mapToInt(one -> one.last() - one.first()).max().orElse(0);
  }

  public Stream<Mention> stream() {
    return all.stream();
  }

  @Override
  public Iterator<Mention> iterator() {
    return all.iterator();
  }

  public boolean isEmpty() {
    return all.isEmpty();
  }

  /** Those of one name. */
  public Mentions named(String name) {
    if (byName == null) {
      Map<String, List<Mention>> lists = new HashMap<>();
      all.forEach(one -> lists.computeIfAbsent(one.name(), any -> new ArrayList<>()).add(one));
      byName = new HashMap<>();
      lists.forEach((any, list) -> byName.put(any, new Mentions(list)));
    }
    return byName.getOrDefault(name, NONE);
  }

  /** Those whose first word lies from one word to another, both included. */
  public List<Mention> from(int first, int last) {
    int begin = indexFrom(first);
    int end = Math.max(begin, indexFrom(last + 1));
    return all.subList(begin, end);
  }

  /** Those with a word from one word to another, both included; perhaps some just before. */
  public List<Mention> around(int first, int last) {
    return from(first - longest, last);
  }

  /** The last that begins before a word, or null. */
  public Mention lastBefore(int word) {
    int index = indexFrom(word);
    return index == 0 ? null : all.get(index - 1);
  }

  private int indexFrom(int word) {
    return indexFrom(all, word);
  }

  /**
   * The index of the first mention that begins at a word or after it; the size of the list where
   * none does.
   *
   * @param all in the order of their first words
   */
  public static int indexFrom(List<Mention> all, int word) {
    int low = 0;
    int high = all.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (all.get(middle).first() < word) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
