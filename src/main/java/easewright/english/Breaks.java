package easewright.english;

import easewright.number.WordLists;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Finds where sentences end and where a speaker draws breath. */
public final class Breaks {
  /** A line with one of these marks in it; possessive, so that no mark is looked for twice. */
  private static final Pattern MARKED =
      Pattern.compile(
          "[^,:()\\u2013\\u2014/\\n\\r\\u0085\\u2028\\u2029]*+[,:()\\u2013\\u2014/].*+");

  private static final int SHORT_LINE = 60;

  /** Letters of the longest word that a full stop cuts short: "approx." */
  private static final int LONGEST_SHORT_FORM = 6;

  private final WordLists lists;

  public Breaks(WordLists lists) {
    this.lists = lists;
  }

  /** What stands before each word. */
  public List<Break> in(String text, List<Word> words) {
    List<Break> breaks = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      breaks.add(i == 0 ? Break.STOP : before(text, words.get(i - 1), words.get(i)));
      if (i > 0 && isArticle(words.get(i - 1), words.get(i)) && breaks.get(i - 1) == Break.JOIN) {
        breaks.set(i - 1, Break.NONE);
      }
    }
    return breaks;
  }

  /** "An inch", where "an it rolls" is an "and" cut short. */
  private boolean isArticle(Word an, Word next) {
    return an.plain().equals("an")
        && next.plain().matches("[aeiou].*")
        && !lists.has("no noun after", next.plain())
        && !next.plain().startsWith("it")
        && !next.plain().startsWith("i'");
  }

  private Break before(String text, Word last, Word next) {
    String between = text.substring(last.to(), next.from());
    boolean number = Character.isDigit(next.plain().charAt(0));
    for (int i = 0; i < between.length(); i++) {
      char c = between.charAt(i);
      boolean stop =
          c == '!'
              || c == '?'
              || c == ';'
              || c == '\u2026'
              || c == '\n' && endsLine(text, last.to() + i);
      // "approx. 4 cm" ends no sentence
      if (stop || c == '.' && !(number && last.plain().length() <= LONGEST_SHORT_FORM)) {
        return Break.STOP;
      }
    }
    if (lists.has("turns", next.plain())) {
      return Break.TURN;
    }
    boolean fraction = number && between.equals("/");
    if (!fraction && (MARKED.matcher(between).matches() || between.contains(" - "))) {
      // "on the front, above the bust" is one breath
      return lists.has("prepositions", next.plain()) ? Break.NONE : Break.PAUSE;
    }
    // "not while dressing" is one breath
    return lists.has("joins", next.plain()) && !last.plain().equals("not")
        ? Break.JOIN
        : Break.NONE;
  }

  /**
   * Whether a line was ended on purpose: it is short or an empty one follows; else it is wrapped.
   */
  private static boolean endsLine(String text, int lineEnd) {
    int start = text.lastIndexOf('\n', lineEnd - 1) + 1;
    boolean emptyNext = lineEnd + 1 >= text.length() || text.charAt(lineEnd + 1) == '\n';
    return emptyNext || lineEnd - start < SHORT_LINE;
  }

  /** Numbers each stretch of words between breaks of at least this strength. */
  public static int[] numbered(List<Break> breaks, Break least) {
    int[] numbers = new int[breaks.size()];
    int number = -1;
    for (int i = 0; i < numbers.length; i++) {
      number += i == 0 || breaks.get(i).compareTo(least) >= 0 ? 1 : 0;
      numbers[i] = number;
    }
    return numbers;
  }
}
