package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import java.util.BitSet;

/** Finds which mention of an element of a phrase belongs to another element. */
final class NearestMention {
  /** Farther apart, words of one sentence speak of different things. */
  private static final int FARTHEST = 5;

  private final Lexicon lexicon;

  NearestMention(Lexicon lexicon) {
    this.lexicon = lexicon;
  }

  /**
   * The mention nearest to another in its sentence.
   *
   * @param used words that other elements of the phrase have taken
   * @return null where none is near enough, or another subject begins between them
   */
  Mention to(Mention at, Mentions places, BitSet used, Post post) {
    if (places == null) {
      return null;
    }
    Mention best = null;
    int bestDistance = Integer.MAX_VALUE;
    Stretch sentence = post.sentenceOf(at.first());
    int first = Math.max(sentence.first(), post.layout().firstWithin(FARTHEST, at.first()));
    int last = Math.min(sentence.last(), post.layout().lastWithin(FARTHEST, at.last()));
    for (Mention one : places.around(first, last)) {
      if (one.first() < sentence.first()) {
        continue;
      }
      boolean before = one.last() < at.first();
      int from = before ? one.last() : at.last();
      int to = before ? at.first() : one.first();
      if (used.get(one.first())
          || used.get(one.last())
          || from >= to && one.first() != at.first()) {
        continue;
      }
      int distance = from >= to ? 0 : post.layout().meaning(from + 1, to);
      if (distance > FARTHEST || distance >= bestDistance) {
        continue;
      }
      Break strongest = from >= to ? Break.NONE : post.strongest(from, to);
      boolean where = lexicon.isPart(one.name()) || lexicon.isPlace(one.name());
      boolean apart =
          strongest.compareTo(Break.TURN) >= 0
              || strongest == Break.PAUSE && !(where && before)
              || strongest != Break.NONE && newSubject(from, to, post);
      distance += strongest == Break.PAUSE ? 1 : 0;
      if (!apart && distance <= FARTHEST && distance < bestDistance) {
        best = one;
        bestDistance = distance;
      }
    }
    return best;
  }

  /** Whether another thing begins to be spoken of between two words. */
  private boolean newSubject(int from, int to, Post post) {
    for (int i = from + 1; i <= to; i++) {
      if (post.breaks().get(i) != Break.NONE
          && (post.lists().has("subjects", post.words().get(i).plain())
              || i + 1 < to && post.lists().has("subjects", post.words().get(i + 1).plain())
              || post.mentions().from(i, i + 1).stream()
                  .anyMatch(one -> lexicon.isPart(one.name()) && one.last() < to))) {
        return true;
      }
    }
    return false;
  }
}
