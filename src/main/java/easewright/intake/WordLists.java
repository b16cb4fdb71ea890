package easewright.intake;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The lists of everyday words that reading goes by, as the rule book has them under "reader". */
final class WordLists {
  private static final String AS = " as ";

  private final Map<String, Set<String>> lists = new HashMap<>();
  private final Map<String, List<String>> inOrder;

  WordLists(Map<String, List<String>> inOrder) {
    this.inOrder = inOrder;
    inOrder.forEach((name, words) -> lists.put(name, Set.copyOf(words)));
  }

  /**
   * Whether a word is on a list.
   *
   * @throws IllegalArgumentException if the rule book has no such list
   */
  boolean has(String list, String word) {
    return set(list).contains(word);
  }

  /** The words of a list, in the order written. */
  List<String> words(String list) {
    set(list);
    return inOrder.get(list);
  }

  /** What each word of a list of "one as another" is taken for. */
  Map<String, String> pairs(String list) {
    Map<String, String> pairs = new LinkedHashMap<>();
    for (String pair : words(list)) {
      int as = pair.indexOf(AS);
      if (as < 1) {
        throw new IllegalArgumentException(
            "\"" + pair + "\" in the list \"" + list + "\" must read \"word as word\".");
      }
      pairs.put(pair.substring(0, as), pair.substring(as + AS.length()));
    }
    return pairs;
  }

  private Set<String> set(String list) {
    Set<String> words = lists.get(list);
    if (words == null) {
      throw new IllegalArgumentException("The rule book has no list of words \"" + list + "\".");
    }
    return words;
  }
}
