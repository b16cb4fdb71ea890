package easewright.intake;

import java.util.Comparator;
import java.util.List;

/** What a change did: better, worse or the same. */
final class OutcomeWords {
  private static final List<String> NAMES = List.of("better", "worse", "same");
  private static final int FARTHEST = 14;

  private OutcomeWords() {}

  /** The nearest word on it after the change, in its sentence or the next, or before a "since". */
  static String of(Match change, Post post) {
    String before = before(change, post);
    if (before != null) {
      return before;
    }
    int sentence = post.sentence()[change.last()];
    return post.cues().stream()
        .filter(cue -> NAMES.contains(cue.name()))
        .filter(cue -> cue.first() > change.last() && cue.first() - change.last() <= FARTHEST)
        .filter(
            cue ->
                post.sentence()[cue.first()] == sentence
                    || post.sentence()[cue.first()] == sentence + 1 && isTelling(post, change))
        .filter(cue -> !isTurned(post, cue))
        .min(
            Comparator.comparingInt(Mention::first)
                .thenComparing(Comparator.comparingInt(Mention::words).reversed()))
        .map(Mention::name)
        .orElse(null);
  }

  private static boolean isTelling(Post post, Match change) {
    int next = Whereabouts.sentenceEnd(post, change.last()) + 1;
    return next < post.words().size()
        && post.lists().has("outcome openers", post.words().get(next).plain());
  }

  /** "Not better, it was worse": the word denied tells nothing. */
  private static boolean isTurned(Post post, Mention cue) {
    return !cue.name().equals("same")
        && post.cues("no").stream()
            .anyMatch(
                no ->
                    no.last() < cue.first()
                        && cue.first() - no.last() <= 2
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
    if (post.cues("no").stream().anyMatch(no -> since(no, change))) {
      return "better";
    }
    int sentence = post.sentence()[change.first()];
    return post.cues().stream()
        .filter(cue -> NAMES.contains(cue.name()))
        .filter(cue -> cue.last() < change.first() && post.sentence()[cue.first()] == sentence)
        .max(Comparator.comparingInt(Mention::first))
        .map(Mention::name)
        .orElse(null);
  }

  private static boolean since(Mention no, Match change) {
    return no.last() < change.first() && change.first() - no.last() <= 4;
  }
}
