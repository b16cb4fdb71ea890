package easewright.number;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The lists of everyday words that reading goes by, as the rule book has them under "reader". */
public final class WordLists {
  private static final String AS = " as ";

  /** Letters that may end a word; bounded, so that no word takes long. */
  private static final String ENDING = "\\p{L}{0,12}";

  private static final Pattern SIGN = Pattern.compile("[^\\p{L}\\d '’]");

  private final Map<String, Set<String>> lists = new HashMap<>();
  private final Map<String, List<String>> inOrder;

  public WordLists(Map<String, List<String>> inOrder) {
    this.inOrder = inOrder;
    inOrder.forEach((name, words) -> lists.put(name, Set.copyOf(words)));
  }

  /**
   * Whether a word is on a list.
   *
   * @throws IllegalArgumentException if the rule book has no such list
   */
  public boolean has(String list, String word) {
    return set(list).contains(word);
  }

  /** Whether the rule book has a list of this name. */
  public boolean isKnown(String list) {
    return lists.containsKey(list);
  }

  /** The words of a list, in the order written. */
  public List<String> words(String list) {
    set(list);
    return inOrder.get(list);
  }

  /** What each word of a list of "one as another" is taken for. */
  public Map<String, String> pairs(String list) {
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

  /** What number each phrase of a list of "phrase as number" stands for. */
  public Map<String, Double> numbers(String list) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    pairs(list).forEach((phrase, number) -> numbers.put(phrase, Double.valueOf(number)));
    return numbers;
  }

  /** A regular expression, without a group, that any phrase of these lists matches. */
  public String oneOf(String... names) {
    List<String> phrases = new ArrayList<>();
    for (String list : names) {
      phrases.addAll(words(list));
    }
    return oneOf(phrases);
  }

  /**
   * A regular expression, without a group, that any of these phrases matches; the longest first, so
   * that none hides behind its own beginning. An asterisk stands for any ending of a word.
   */
  public static String oneOf(Collection<String> phrases) {
    return phrases.stream()
        .sorted(Comparator.comparingInt(String::length).reversed())
        .map(phrase -> SIGN.matcher(phrase).replaceAll("\\\\$0").replace("\\*", ENDING))
        .collect(Collectors.joining("|", "(?:", ")"));
  }

  private Set<String> set(String list) {
    Set<String> words = lists.get(list);
    if (words == null) {
      throw new IllegalArgumentException("The rule book has no list of words \"" + list + "\".");
    }
    return words;
  }
}
