package easewright.intake;

import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.intake.Reading.TextRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds changes that the writer asks about: "should I make the band tighter?", "wider straps
 * next?", "a friend told me to take in the band".
 */
final class AskedChanges {
  private static final double SURE = 0.85;

  /** As many words as may stand between the question and the change. */
  private static final int FARTHEST = 4;

  /** As many words as may stand before or after a change that is all of a question: "so ...?" */
  private static final int MOST_BESIDE = 1;

  private final Wordings changes;
  private final NamedPhrases questions;
  private final NamedPhrases marked;
  private final AdviceOfOthers advice;

  /**
   * @param known ids of the family's changes; shared lists name others too
   */
  AskedChanges(EverydayWords words, Set<String> known, Lexicon lexicon) {
    Map<String, List<String>> phrases = phrases(words, lexicon);
    phrases.keySet().retainAll(known);
    this.changes = new Wordings(phrases, lexicon, 2);
    this.questions = NamedPhrases.of("asks about a change", lexicon);
    this.marked = NamedPhrases.of("asks about a change where marked", lexicon);
    this.advice = new AdviceOfOthers(lexicon);
  }

  /** What is said of changes made, and what is said only of those still to be made. */
  private static Map<String, List<String>> phrases(EverydayWords words, Lexicon lexicon) {
    Map<String, List<String>> phrases = new LinkedHashMap<>();
    words.changes().forEach((id, said) -> phrases.put(id, new ArrayList<>(said)));
    lexicon
        .lists()
        .pairs("changes to come")
        .forEach((said, id) -> phrases.computeIfAbsent(id, any -> new ArrayList<>()).add(said));
    return phrases;
  }

  List<TextRead> in(Post post) {
    Map<String, TextRead> found = new LinkedHashMap<>();
    Mentions questions = this.questions.in(post);
    Mentions marked = this.marked.in(post);
    Mentions advised = advice.open(post);
    for (Match match : changes.in(post, List.of())) {
      find(match, questions, post, found);
      Stretch sentence = post.sentenceOf(match.first());
      if (QuestionFinder.isMarked(post, sentence.last())) {
        find(match, marked, post, found);
        if (isAllOf(sentence, match)) {
          add(match, sentence.first(), post, found);
        }
      }
      find(match, advised, post, found);
    }
    return List.copyOf(found.values());
  }

  private static boolean isAllOf(Stretch sentence, Match match) {
    return match.first() - sentence.first() <= MOST_BESIDE
        && sentence.last() - match.last() <= MOST_BESIDE;
  }

  private static void find(
      Match match, Mentions questions, Post post, Map<String, TextRead> found) {
    int first = match.first();
    questions.from(first - FARTHEST - 4, first).stream()
        .filter(one -> one.last() <= match.last() && first - one.last() - 1 <= FARTHEST)
        .filter(one -> post.sentence()[one.first()] == post.sentence()[first])
        .findFirst()
        .ifPresent(one -> add(match, one.first(), post, found));
  }

  private static void add(Match match, int from, Post post, Map<String, TextRead> found) {
    found.putIfAbsent(
        match.saying().of(),
        new TextRead(match.saying().of(), post.span(from, match.last()), SURE));
  }
}
