package easewright.intake;

import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.TextRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds causes the writer believes in or asks about. They are never taken as seen. */
final class Beliefs {
  private static final int REACH = 14;
  private static final int REACH_BACK = 6;
  private static final int REACH_OF_NO = 4;

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
    boolean before = cue.first() <= match.first();
    int distance = before ? match.first() - cue.last() : cue.first() - match.last();
    if (distance > (before ? REACH : REACH_BACK)
        || post.sentence()[cue.first()] != post.sentence()[match.first()]) {
      return false;
    }
    return before
        ? !isAgainst(cue, match, post)
        : post.lists().has("opinion openers", post.words().get(cue.first()).plain())
            && post.strongest(match.last(), cue.first()).compareTo(Post.Break.TURN) < 0;
  }

  /** "My friend says smaller cups, but I'm sure ...": another's guess, not the writer's. */
  private static boolean isAgainst(Mention cue, Match match, Post post) {
    return post.lists().has("said by others", post.words().get(cue.first()).plain())
        && post.strongest(match.last(), Whereabouts.sentenceEnd(post, match.last()))
                .compareTo(Post.Break.TURN)
            >= 0;
  }

  private static boolean isDenied(Match match, Post post) {
    return post.cues("no").stream()
        .anyMatch(
            no ->
                no.first() <= match.last()
                    && match.first() - no.last() <= REACH_OF_NO
                    && post.clause()[no.first()] == post.clause()[match.first()]
                    && match.said().stream().noneMatch(one -> one.covers(no.first())));
  }

  /**
   * What is suspected or was done is not seen: "I think the straps are too short", "I made the
   * straps longer" report no sign.
   */
  List<Match> seen(List<Match> said, List<Match> suspected, List<ChangeRead> earlier, Post post) {
    return said.stream()
        .filter(match -> suspected.stream().noneMatch(belief -> isTheSame(belief, match)))
        .filter(
            match ->
                earlier.stream()
                    .noneMatch(
                        change -> change.span().covers(post.span(match.first(), match.last()))))
        .toList();
  }

  private static boolean isTheSame(Match belief, Match match) {
    BitSet shared = belief.words();
    shared.and(match.words());
    int own = match.words().cardinality();
    return shared.cardinality() >= Math.min(2, own) && own <= belief.words().cardinality() + 1;
  }

  /** What is suspected, each cause once. */
  List<TextRead> asTexts(List<Match> suspected, Post post) {
    Map<String, TextRead> found = new LinkedHashMap<>();
    for (Match match : suspected) {
      found.putIfAbsent(
          match.saying().of(),
          new TextRead(
              match.saying().of(), post.span(match.first(), match.last()), match.confidence()));
    }
    return List.copyOf(found.values());
  }
}
