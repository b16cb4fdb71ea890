package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.intake.Reading.ChangeRead;
import easewright.intake.Reading.TextRead;
import easewright.rulebook.EverydayWords;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

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
          beside(match, REACH, REACH_BACK, post.cues("belief")).stream()
                  .anyMatch(cue -> reaches(cue, match, post))
              || Whereabouts.isAsked(post, match.last());
      if (thought && !isDenied(match, post)) {
        found.add(match);
      }
    }
    return found;
  }

  /** The cues no farther off, so that none far away is looked at. */
  private static List<Mention> beside(Match match, int before, int after, Mentions cues) {
    return cues.around(match.first() - before, match.last() + after);
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
            && post.strongest(match.last(), cue.first()).compareTo(Break.TURN) < 0;
  }

  /** "My friend says smaller cups, but I'm sure ...": another's guess, not the writer's. */
  private static boolean isAgainst(Mention cue, Match match, Post post) {
    return post.lists().has("said by others", post.words().get(cue.first()).plain())
        && post.strongest(match.last(), Whereabouts.sentenceEnd(post, match.last()))
                .compareTo(Break.TURN)
            >= 0;
  }

  private static boolean isDenied(Match match, Post post) {
    return beside(match, REACH_OF_NO, 0, post.cues("no")).stream()
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
    Map<Integer, List<Match>> beliefs = byWord(suspected);
    return said.stream()
        .filter(match -> sharingWords(match, beliefs).noneMatch(one -> isTheSame(one, match)))
        .filter(
            match ->
                earlier.stream()
                    .noneMatch(
                        change -> change.span().covers(post.span(match.first(), match.last()))))
        .toList();
  }

  /** Beliefs by their words, so that none is compared with what is said elsewhere. */
  private static Map<Integer, List<Match>> byWord(List<Match> suspected) {
    Map<Integer, List<Match>> beliefs = new HashMap<>();
    for (Match one : suspected) {
      one.words().stream()
          .forEach(word -> beliefs.computeIfAbsent(word, any -> new ArrayList<>()).add(one));
    }
    return beliefs;
  }

  private static Stream<Match> sharingWords(Match match, Map<Integer, List<Match>> beliefs) {
    return match.words().stream()
        .boxed()
        .flatMap(word -> beliefs.getOrDefault(word, List.of()).stream());
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
