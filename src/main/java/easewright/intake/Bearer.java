package easewright.intake;

import easewright.english.Break;
import easewright.english.Mention;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Who or what a danger is said of. "Lumpy" said of a seam and "dead" said of elastic are no danger;
 * where that is not plain, a person must read it. Common practice in reading posts: the thing named
 * as subject is what the words are about, unless a part of the body stands beside it.
 */
final class Bearer {
  /** Whose danger it is. */
  enum Whose {
    PERSON,
    THING,
    /** Not plain; only a person can judge. */
    DOUBT
  }

  private static final String NUMB = "numb-or-tingling-arm-or-hand";
  private static final String UNEQUAL = "difference-between-the-sides-is-new";
  private static final String LUMP = "new-lump-dimpling-or-discharge";

  /** What elastic or a seam does to skin: these may be its subject. */
  private static final Set<String> DONE_BY_CLOTH =
      Set.of(
          "broken-skin-or-rash",
          "spreading-redness-or-infected-skin",
          "swelling-of-face-or-hives",
          "rash-in-a-band-of-blisters",
          "cut-or-needle-injury");

  /** What delight and dismay are likened to. */
  private static final Set<String> LIKENED =
      Set.of(
          "breathless-or-dizzy",
          "fainted-or-blacked-out",
          "racing-or-irregular-heartbeat",
          "chest-pain-or-pressure",
          "fever");

  private static final int FARTHEST_DELIGHT = 5;
  private static final int FARTHEST_PLACE = 6;

  private final Map<String, List<Mention>> groups;
  private final Post post;

  /**
   * @param groups mentions of each group of words in the post
   */
  Bearer(Map<String, List<Mention>> groups, Post post) {
    this.groups = groups;
    this.post = post;
  }

  /**
   * Whose danger is meant.
   *
   * @param sign the danger
   * @param first index of the first word that tells of it
   * @param last index of the last
   * @param head index of the first word that says what is the matter
   */
  Whose of(String sign, int first, int last, int head) {
    Predicate<Mention> ofClause = one -> post.clause()[one.first()] == post.clause()[head];
    Predicate<Mention> ofSentence = one -> post.sentence()[one.first()] == post.sentence()[head];
    boolean body =
        all("body")
            .anyMatch(
                one ->
                    ofClause.test(one)
                        || one.first() >= first && one.last() <= last && ofSentence.test(one));
    if (LIKENED.contains(sign)
        && all("delight").anyMatch(one -> isJustBefore(one, head, FARTHEST_DELIGHT))) {
      return Whose.DOUBT;
    }
    if (sign.equals(NUMB) && isOnlyOf("other-limb", "upper-limb", ofSentence)
        || sign.equals(UNEQUAL)
            && all("garment-piece").anyMatch(ofClause)
            && all("breast").noneMatch(ofSentence)
            && all("lately").noneMatch(ofSentence)) {
      return Whose.DOUBT;
    }
    if (body) {
      return Whose.PERSON;
    }
    boolean predicate = all("thing").anyMatch(one -> isSaidOf(one, head));
    if (predicate) {
      return DONE_BY_CLOTH.contains(sign) ? Whose.DOUBT : Whose.THING;
    }
    if (all("person").anyMatch(ofClause)) {
      return Whose.PERSON;
    }
    boolean elsewhere = Stream.concat(all("body"), all("person")).anyMatch(ofSentence);
    return ofThingBeside(sign, last, head, ofClause, elsewhere);
  }

  /** Whether a machine, a pet or the like was operated on or is due, and nobody. */
  boolean isOfThing(Mention circumstance) {
    Predicate<Mention> ofClause =
        one -> post.clause()[one.first()] == post.clause()[circumstance.first()];
    return all("far-thing").anyMatch(one -> ofClause.test(one) && isBeside(one, circumstance))
        && Stream.concat(all("body"), all("person")).noneMatch(ofClause);
  }

  /** Before it, as its subject, or soon after: "came out in the wash". */
  private static boolean isBeside(Mention thing, Mention told) {
    return thing.last() < told.first() || thing.first() - told.last() <= FARTHEST_DELIGHT;
  }

  private Whose ofThingBeside(
      String sign, int last, int head, Predicate<Mention> ofClause, boolean elsewhere) {
    if (DONE_BY_CLOTH.contains(sign)) {
      return Whose.PERSON;
    }
    if (all("causing").noneMatch(one -> ofClause.test(one) && one.first() < head)) {
      if (all("thing").anyMatch(one -> ofClause.test(one) && one.last() < head)) {
        return Whose.DOUBT; // plain only where "is" or the like stands between
      }
    }
    boolean inThing =
        sign.equals(LUMP)
            && !elsewhere
            && all("thing")
                .anyMatch(
                    one ->
                        one.first() > last
                            && one.first() - last <= FARTHEST_PLACE
                            && post.sentence()[one.first()] == post.sentence()[last]
                            && all("beneath")
                                .noneMatch(a -> last < a.first() && a.last() < one.first()));
    return inThing ? Whose.DOUBT : Whose.PERSON;
  }

  private Stream<Mention> all(String group) {
    return groups.getOrDefault(group, List.of()).stream();
  }

  private boolean isOnlyOf(String group, String other, Predicate<Mention> where) {
    return all(group).anyMatch(where) && all(other).noneMatch(where);
  }

  private boolean isJustBefore(Mention one, int head, int reach) {
    return one.last() < head
        && head - one.last() <= reach
        && post.clause()[one.first()] == post.clause()[head]
        && all("body").noneMatch(a -> one.last() < a.first() && a.last() < head);
  }

  /** "The seam is rather lumpy": nothing but "is" and "rather" between. */
  private boolean isSaidOf(Mention thing, int head) {
    if (thing.last() >= head - 1
        || head - thing.last() > FARTHEST_DELIGHT
        || post.sentence()[thing.first()] != post.sentence()[head]
        || post.strongest(thing.last(), head).compareTo(Break.PAUSE) >= 0) {
      return false;
    }
    for (int i = thing.last() + 1; i < head; i++) {
      int word = i;
      if (all("is-so").noneMatch(one -> one.covers(word))) {
        return false;
      }
    }
    return true;
  }
}
