package easewright.intake;

import easewright.english.Break;
import easewright.english.Denials;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.english.Word;
import easewright.english.WordGaps;
import easewright.number.Amount;
import easewright.number.TextSpan;
import easewright.number.WordLists;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;

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
 * @param lists the lists of everyday words
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
    WordGaps layout,
    Denials denials,
    WordLists lists) {

  /** The strongest break after one word and up to another. */
  Break strongest(int after, int upTo) {
    return layout.strongest(after, upTo);
  }

  /** What is mentioned from one sentence to another, by its first word. */
  List<Mention> mentions(int firstSentence, int lastSentence) {
    return mentions.from(
        WordGaps.firstOf(firstSentence, sentence),
        WordGaps.firstOf(lastSentence + 1, sentence) - 1);
  }

  /** What is mentioned in a clause. */
  List<Mention> mentionsInClause(int number) {
    return mentions.from(
        WordGaps.firstOf(number, clause), WordGaps.firstOf(number + 1, clause) - 1);
  }

  /** The words of the clause of a word. */
  Stretch clauseOf(int word) {
    return WordGaps.stretch(word, clause);
  }

  /** The words of the sentence of a word. */
  Stretch sentenceOf(int word) {
    return WordGaps.stretch(word, sentence);
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

  /** The word with which an amount begins. */
  int at(Amount amount) {
    return Whereabouts.wordAt(this, amount.span().from());
  }

  /** Whether a piece is named between the first and the last word of a span. */
  boolean names(String piece, TextSpan span) {
    return mentions
        .from(Whereabouts.wordAt(this, span.from()), Whereabouts.wordAt(this, span.to() - 1))
        .stream()
        .anyMatch(one -> one.name().equals(piece));
  }

  /** All of its words; only where it has any. */
  TextSpan whole() {
    return span(0, words.size() - 1);
  }

  /** Whether a word of a stretch is on a list. */
  boolean says(String list, Stretch here) {
    int i = here.first();
    while (i <= here.last() && !lists.has(list, words.get(i).plain())) {
      i++;
    }
    return i <= here.last();
  }

  /**
   * Whether a phrase of a stretch is on a list.
   *
   * @param longest words of the longest phrase of that list
   */
  boolean says(String list, Stretch here, int longest) {
    for (int i = here.first(); i <= here.last(); i++) {
      StringBuilder phrase = new StringBuilder();
      for (int end = i; end <= Math.min(here.last(), i + longest - 1); end++) {
        phrase.append(end == i ? "" : " ").append(words.get(end).plain());
        if (lists.has(list, phrase.toString())) {
          return true;
        }
      }
    }
    return false;
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

  /**
   * The same text where these words name and say nothing: what is said of a trial, or of an earlier
   * toile, is not said of this one.
   */
  Post without(BitSet taken) {
    if (taken.isEmpty()) {
      return this;
    }
    BitSet nothing = (BitSet) masked.clone();
    nothing.or(taken);
    return new Post(
        text,
        words,
        sentence,
        clause,
        breaks,
        new Mentions(mentions.stream().filter(one -> !taken.get(one.first())).toList()),
        new Mentions(cues.stream().filter(one -> !taken.get(one.first())).toList()),
        nothing,
        layout,
        denials,
        lists);
  }

  /** Whether no word of a stretch was mended. */
  boolean isSpelledRight(TextSpan span) {
    return words.stream()
        .filter(one -> span.from() <= one.from() && one.to() <= span.to())
        .allMatch(
            one ->
                text.substring(one.from(), one.to())
                    .toLowerCase(Locale.ROOT)
                    .replace('\u2019', '\'')
                    .startsWith(one.plain()));
  }

  /** The words from one to another as written. */
  TextSpan span(int first, int last) {
    return new TextSpan(words.get(first).from(), words.get(last).to());
  }
}
