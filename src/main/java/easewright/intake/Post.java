package easewright.intake;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A text taken apart: words, where sentences and clauses end, and what the words stand for.
 *
 * @param text as written
 * @param words mended where they were misspelt
 * @param sentence the sentence of each word
 * @param clause the clause of each word; clauses end where a speaker draws breath or turns
 * @param breaks what stands before each word
 * @param mentions parts, places and ideas
 * @param cues words that turn, weaken or time what is said
 * @param masked words that mean nothing of the kind here: "back" in "come back"
 * @param layout where breaks and words of meaning stand
 * @param denials which denials reach which word
 */
record Post(
    String text,
    List<Word> words,
    int[] sentence,
    int[] clause,
    List<Break> breaks,
    Mentions mentions,
    Mentions cues,
    BitSet masked,
    Layout layout,
    Denials denials) {

  /** What stands before a word, the weakest first. */
  enum Break {
    NONE,
    /** "and", "so", "because": the same breath, another thing said. */
    JOIN,
    /** A comma, a bracket, a dash. */
    PAUSE,
    /** "but", "although": what was denied before is not denied after. */
    TURN,
    /** The end of a sentence. */
    STOP
  }

  /** A line with one of these marks in it; possessive, so that no mark is looked for twice. */
  private static final Pattern MARKED =
      Pattern.compile(
          "[^,:()\\u2013\\u2014/\\n\\r\\u0085\\u2028\\u2029]*+[,:()\\u2013\\u2014/].*+");

  private static final int SHORT_LINE = 60;

  private static final List<String> JOINS =
      List.of(
          "and", "plus", "also", "so", "because", "cause", "cuz", "since", "then", "n", "an",
          "while");
  private static final List<String> TURNS =
      List.of("but", "although", "however", "except", "yet", "whereas", "otherwise");
  private static final List<String> PREPOSITIONS =
      List.of(
          "on", "in", "at", "under", "above", "below", "near", "by", "along", "behind", "between",
          "toward", "towards", "across", "right", "just", "over", "from", "of");

  /** What stands before each word. */
  static List<Break> breaks(String text, List<Word> words) {
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
  private static boolean isArticle(Word an, Word next) {
    return an.plain().equals("an")
        && next.plain().matches("(?!and$|i$|it|im$|i'|in$|is$|if$)[aeiou].*");
  }

  private static Break before(String text, Word last, Word next) {
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
      if (stop || c == '.' && !(number && last.plain().length() <= 6)) {
        return Break.STOP;
      }
    }
    if (TURNS.contains(next.plain())
        && !next.plain().equals("still")
        && !next.plain().equals("only")) {
      return Break.TURN;
    }
    boolean fraction = number && between.equals("/");
    if (!fraction && (MARKED.matcher(between).matches() || between.contains(" - "))) {
      // "on the front, above the bust" is one breath
      return PREPOSITIONS.contains(next.plain()) ? Break.NONE : Break.PAUSE;
    }
    // "not while dressing" is one breath
    return JOINS.contains(next.plain()) && !last.plain().equals("not") ? Break.JOIN : Break.NONE;
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
  static int[] numbered(List<Break> breaks, Break least) {
    int[] numbers = new int[breaks.size()];
    int number = -1;
    for (int i = 0; i < numbers.length; i++) {
      number += i == 0 || breaks.get(i).compareTo(least) >= 0 ? 1 : 0;
      numbers[i] = number;
    }
    return numbers;
  }

  /** The strongest break after one word and up to another. */
  Break strongest(int after, int upTo) {
    return layout.strongest(after, upTo);
  }

  /** What is mentioned from one sentence to another, by its first word. */
  List<Mention> mentions(int firstSentence, int lastSentence) {
    return mentions.from(
        Layout.firstOf(firstSentence, sentence), Layout.firstOf(lastSentence + 1, sentence) - 1);
  }

  /** What is mentioned in a clause. */
  List<Mention> mentionsInClause(int number) {
    return mentions.from(Layout.firstOf(number, clause), Layout.firstOf(number + 1, clause) - 1);
  }

  /** The words of the clause of a word. */
  Stretch clauseOf(int word) {
    return Layout.stretch(word, clause);
  }

  /** The words of the sentence of a word. */
  Stretch sentenceOf(int word) {
    return Layout.stretch(word, sentence);
  }

  /** The cues of one name. */
  Mentions cues(String name) {
    return cues.named(name);
  }

  /** The cues of every name in the clause of a word. */
  List<Mention> cuesInClause(int word) {
    Stretch here = clauseOf(word);
    return cues.from(here.first(), here.last());
  }

  /** Whether a cue of this name stands in the same clause. */
  boolean cueInClause(String name, int word) {
    Stretch here = clauseOf(word);
    return !cues.named(name).from(here.first(), here.last()).isEmpty();
  }

  /** Whether a cue of this name stands in the same sentence. */
  boolean cueInSentence(String name, int word) {
    Stretch here = sentenceOf(word);
    return !cues.named(name).from(here.first(), here.last()).isEmpty();
  }

  /** The words from one to another as written. */
  Span span(int first, int last) {
    return new Span(words.get(first).from(), words.get(last).to());
  }
}
