package easewright.intake;

import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.List;

/** Finds causes the writer believes in or asks about. They are never taken as seen. */
final class Beliefs {
  private static final int REACH = 14;

  private final Wordings wordings;

  Beliefs(EverydayWords words, Lexicon lexicon) {
    this.wordings = new Wordings(words.beliefs(), lexicon, 4);
  }

  List<Match> in(Post post) {
    List<Match> found = new ArrayList<>();
    for (Match match : wordings.in(post, List.of())) {
      boolean thought =
          post.cues("belief").stream().anyMatch(cue -> reaches(cue, match, post))
              || Whereabouts.isAsked(post, match.last());
      if (thought && !isDenied(match, post)) {
        found.add(match);
      }
    }
    return found;
  }

  /** Said before it in the same sentence, or right after it: "too short, I'm sure of it". */
  private static boolean reaches(Mention cue, Match match, Post post) {
    boolean sentence = post.sentence()[cue.first()] == post.sentence()[match.first()];
    if (cue.first() <= match.first()) {
      return sentence && match.first() - cue.last() <= REACH;
    }
    return sentence && cue.first() - match.last() <= REACH && !isTurned(cue, match, post);
  }

  private static boolean isTurned(Mention cue, Match match, Post post) {
    return cue.first() > match.last()
        && post.strongest(match.last(), cue.first()).compareTo(Post.Break.TURN) >= 0;
  }

  private static boolean isDenied(Match match, Post post) {
    return post.cues("no").stream()
        .anyMatch(
            no ->
                no.last() < match.first()
                    && match.first() - no.last() <= 4
                    && post.clause()[no.first()] == post.clause()[match.first()]);
  }
}
