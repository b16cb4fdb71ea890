package easewright.intake;

import easewright.english.Mention;
import easewright.english.WordGaps;
import java.util.Comparator;
import java.util.List;

/** What a change did: better, worse or the same. */
final class OutcomeWords {
  private static final List<String> NAMES = List.of("better", "worse", "same");
  private static final int FARTHEST = 14;

  /** The same, where it is first told how it was before. */
  private static final int FARTHEST_NOW = 40;

  private static final int REACH_OF_NO = 2;
  private static final int REACH_OF_SINCE = 4;

  private OutcomeWords() {}

  /** Whether a cue tells what a change did. */
  static boolean isOutcome(String cue) {
    return NAMES.contains(cue);
  }

  /** The nearest word on it after the change, in its sentence or the next, or before a "since". */
  static String of(Match change, Post post) {
    String before = before(change, post);
    if (before != null) {
      return before;
    }
    int sentence = post.sentence()[change.last()];
    int told = sentenceAfter(change.last(), post);
    int farthest = told > sentence + 1 ? FARTHEST_NOW : FARTHEST;
    return post.cues().from(change.last() + 1, change.last() + farthest).stream()
        .filter(cue -> NAMES.contains(cue.name()))
        .filter(
            cue ->
                post.sentence()[cue.first()] == sentence
                    || post.sentence()[cue.first()] == told && isTelling(told, post))
        .filter(cue -> !isTurned(post, cue))
        .min(
            Comparator.comparingInt(Mention::first)
                .thenComparing(Comparator.comparingInt(Mention::words).reversed()))
        .map(Mention::name)
        .orElse(null);
  }

  /** The next sentence; the one after it where the next tells how it was before. */
  private static int sentenceAfter(int word, Post post) {
    int next = Whereabouts.sentenceEnd(post, word) + 1;
    boolean before =
        next < post.words().size()
            && post.lists().has("how it was before", post.words().get(next).plain());
    return post.sentence()[word] + (before ? 2 : 1);
  }

  private static boolean isTelling(int sentence, Post post) {
    int first = WordGaps.firstOf(sentence, post.sentence());
    return first < post.words().size()
        && post.lists().has("outcome openers", post.words().get(first).plain());
  }

  /** "Not better, it was worse": the word denied tells nothing. */
  private static boolean isTurned(Post post, Mention cue) {
    return !cue.name().equals("same")
        && post.cues("no").around(cue.first() - REACH_OF_NO, cue.first() - 1).stream()
            .anyMatch(
                no ->
                    no.last() < cue.first()
                        && cue.first() - no.last() <= REACH_OF_NO
                        && post.clause()[no.first()] == post.clause()[cue.first()]);
  }

  /** "That is history since I shortened it", "not since I crossed them". */
  private static String before(Match change, Post post) {
    int since = -1;
    for (int i = Math.max(0, change.first() - 3); i < change.first(); i++) {
      since = post.words().get(i).plain().equals("since") ? i : since;
    }
    if (since < 1) {
      return null;
    }
    if (post.cues("no").around(change.first() - REACH_OF_SINCE, change.first() - 1).stream()
        .anyMatch(no -> since(no, change))) {
      return "better";
    }
    int sentence = post.sentenceOf(change.first()).first();
    return post
        .cues()
        .from(Math.max(sentence, change.first() - FARTHEST), change.first() - 1)
        .stream()
        .filter(cue -> NAMES.contains(cue.name()))
        .filter(cue -> cue.last() < change.first())
        .max(Comparator.comparingInt(Mention::first))
        .map(Mention::name)
        .orElse(null);
  }

  private static boolean since(Mention no, Match change) {
    return no.last() < change.first() && change.first() - no.last() <= REACH_OF_SINCE;
  }
}
