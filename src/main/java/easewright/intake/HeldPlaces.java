package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import java.util.List;

/** Finds where cloth was held out, each place named after the changes that it may show. */
final class HeldPlaces {
  /** As far apart as the two ends of a tuck may be named, in words. */
  private static final int FARTHEST_END = 4;

  private final NamedPhrases places;

  HeldPlaces(Lexicon lexicon) {
    this.places = NamedPhrases.ofPairs("held out at", lexicon);
  }

  /** Every place of a text; of those that share words the fullest. */
  Mentions in(Post post) {
    return fullest(places.in(post));
  }

  /** "At both sides" does not name the sides of the band. */
  private static Mentions fullest(Mentions named) {
    return new Mentions(
        named.stream()
            .filter(
                one ->
                    named.around(one.first(), one.first()).stream()
                        .noneMatch(
                            other ->
                                other.words() > one.words()
                                    && other.covers(one.first())
                                    && other.covers(one.last())))
            .toList());
  }

  /** Places of the clauses that tell of it. */
  static List<Mention> beside(Stretch words, Stretch sentence, Mentions named, Post post) {
    Stretch here =
        clauses(
            new Stretch(
                Math.max(sentence.first(), words.first()), Math.min(sentence.last(), words.last())),
            post);
    return named.from(here.first(), here.last()).stream()
        .filter(one -> !isSubject(one, post))
        .filter(one -> !isEnd(one, named, post))
        .toList();
  }

  /** "With that pinned out the cups are right": the cups are what is seen, not what is held. */
  private static boolean isSubject(Mention place, Post post) {
    int next = place.last() + 1;
    return next < post.words().size()
        && post.lists().has("verbs of a piece", post.words().get(next).plain());
  }

  /** "A tuck from armhole to neck edge": how far it goes, not what it is taken out of. */
  private static boolean isEnd(Mention place, Mentions named, Post post) {
    boolean begins = stands("where a tuck begins", place, post);
    boolean ends = stands("where a tuck ends", place, post);
    return (begins || ends)
        && named.around(place.first() - FARTHEST_END, place.last() + FARTHEST_END).stream()
            .filter(one -> begins ? one.first() > place.last() : one.last() < place.first())
            .anyMatch(
                one -> stands(begins ? "where a tuck ends" : "where a tuck begins", one, post));
  }

  /** Whether a word of this list stands before a place, "the" or "my" perhaps between. */
  private static boolean stands(String list, Mention place, Post post) {
    for (int i = place.first() - 1; i >= Math.max(0, place.first() - 2); i--) {
      String word = post.words().get(i).plain();
      if (post.lists().has(list, word)) {
        return true;
      }
      if (!post.lists().has("before a place", word)) {
        return false;
      }
    }
    return false;
  }

  static Stretch clauses(Stretch words, Post post) {
    return new Stretch(post.clauseOf(words.first()).first(), post.clauseOf(words.last()).last());
  }
}
