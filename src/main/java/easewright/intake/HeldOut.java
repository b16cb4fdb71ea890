package easewright.intake;

import easewright.english.Mention;
import easewright.english.Mentions;
import easewright.english.Stretch;
import easewright.number.Amount;
import easewright.rulebook.RuleBookSource;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds cloth that was pinned, folded or nipped out for a look where no change is named: "pinned 2
 * cm out at the back". What change that shows, its place says, or what was complained of before.
 */
final class HeldOut {
  /** Words of the longest phrase of its lists. */
  private static final int LONGEST = 2;

  /** As far as the amount may stand from the way, in words. */
  private static final int FARTHEST_AMOUNT = 12;

  /** As far as the amount may stand from the beginning of the next sentence, in words. */
  private static final int FARTHEST_NEXT = 5;

  /** As far back as a complaint is looked for, in words. */
  private static final int FARTHEST_FAULT = 80;

  private static final int FARTHEST_PLAN = 8;

  /** A place that shows more changes than these shows none unless a complaint decides. */
  private static final int MOST_GUESSED = 4;

  private static final String OR = " or ";

  private final NamedPhrases ways;
  private final Set<String> known;
  private final HeldPlaces places;
  private final Map<String, String> ofFaults;
  private final ChangeAmounts lengths;

  /**
   * Cloth held out.
   *
   * @param how "held", "pinned" or "basted"
   * @param sure whether it can't have been folded or tucked for good
   * @param way the words that say how
   * @param words that tell of it
   */
  record Held(
      String adjustment, String how, boolean sure, Stretch way, Stretch words, Amount amount) {}

  HeldOut(RuleBookSource book, Lexicon lexicon) {
    this.ways = NamedPhrases.ofPairs("ways of holding out", lexicon);
    this.places = new HeldPlaces(lexicon);
    this.known = book.catalog().adjustments().keySet();
    this.ofFaults = lexicon.lists().pairs("held out of a fault");
    this.lengths = new ChangeAmounts(book, lexicon);
  }

  /** Signs that tell what cloth is held out of. */
  Set<String> faults() {
    return ofFaults.keySet();
  }

  /**
   * @param taken words that tell of something else
   */
  List<Held> in(Post post, List<Amount> amounts, FaultsSaid faults, BitSet taken) {
    Map<Integer, Mention> bySentence = new LinkedHashMap<>();
    for (Mention way : ways.in(post)) {
      if (!taken.get(way.first()) && isDone(way, post)) {
        bySentence.merge(
            post.sentence()[way.first()], way, (one, other) -> surer(one, other, post));
      }
    }
    List<Held> found = new ArrayList<>();
    if (bySentence.isEmpty()) {
      return found;
    }
    Mentions named = places.in(post);
    bySentence
        .values()
        .forEach(way -> held(way, named, post, amounts, faults).ifPresent(found::add));
    return found;
  }

  private static Mention surer(Mention one, Mention other, Post post) {
    return !isSure(one, post) && isSure(other, post) ? other : one;
  }

  private static boolean isSure(Mention way, Post post) {
    return post.lists().has("surer ways of holding out", way.name());
  }

  private static boolean isNeverForGood(Mention way, Post post) {
    return post.lists().has("never held for good", post.words().get(way.first()).plain());
  }

  private Optional<Held> held(
      Mention way, Mentions named, Post post, List<Amount> amounts, FaultsSaid faults) {
    Stretch sentence = post.sentenceOf(way.first());
    if (!post.says("cloth taken up", sentence, LONGEST)) {
      return Optional.empty();
    }
    return amount(way, sentence, post, amounts)
        .filter(
            amount ->
                !post.says(
                    "something else held",
                    HeldPlaces.clauses(words(way, amount, post), post),
                    LONGEST))
        .flatMap(
            amount ->
                adjustment(
                        way,
                        sentence,
                        HeldPlaces.beside(words(way, amount, post), sentence, named, post),
                        faults)
                    .map(
                        id ->
                            new Held(
                                id,
                                way.name(),
                                isSure(way, post) || isNeverForGood(way, post),
                                new Stretch(way.first(), way.last()),
                                words(way, amount, post),
                                amount)));
  }

  /** From the way to the amount, where both stand in one sentence or in two that follow. */
  private static Stretch words(Mention way, Amount amount, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    return new Stretch(Math.min(way.first(), first), Math.max(way.last(), last));
  }

  /**
   * What all places named show, what was complained of deciding between several; else what was
   * complained of last.
   */
  private Optional<String> adjustment(
      Mention way, Stretch sentence, List<Mention> named, FaultsSaid faults) {
    List<String> complained =
        faults
            .allBefore(sentence.first(), way.first(), way.last() + FARTHEST_AMOUNT, FARTHEST_FAULT)
            .stream()
            .map(ofFaults::get)
            .filter(known::contains)
            .toList();
    List<String> shown = null;
    for (Mention place : named) {
      List<String> here = new ArrayList<>(List.of(place.name().split(OR)));
      here.retainAll(known); // a shared list names changes that another family has
      if (shown != null && shown.stream().anyMatch(here::contains)) {
        here.retainAll(shown);
      }
      shown = here;
    }
    if (shown == null || shown.isEmpty()) {
      return complained.stream().findFirst();
    }
    Optional<String> decided = complained.stream().filter(shown::contains).findFirst();
    return decided.isPresent() || shown.size() > MOST_GUESSED ? decided : Optional.of(shown.get(0));
  }

  /** In its sentence, else at the beginning of the next, else in the one before, which it means. */
  private Optional<Amount> amount(Mention way, Stretch here, Post post, List<Amount> amounts) {
    Optional<Amount> own = nearest(way.first(), here, FARTHEST_AMOUNT, post, amounts);
    if (own.isPresent()) {
      return own;
    }
    int next = here.last() + 1;
    if (next < post.words().size()
        && post.says("more of it", first(post.sentenceOf(next)), LONGEST)) {
      return nearest(next, post.sentenceOf(next), FARTHEST_NEXT, post, amounts);
    }
    boolean pointsBack =
        post.says("pointing back", new Stretch(here.first(), way.first()), LONGEST);
    return pointsBack && here.first() > 0
        ? nearest(here.first(), post.sentenceOf(here.first() - 1), FARTHEST_AMOUNT, post, amounts)
        : Optional.empty();
  }

  private static Stretch first(Stretch sentence) {
    return new Stretch(sentence.first(), Math.min(sentence.last(), sentence.first() + 1));
  }

  private Optional<Amount> nearest(
      int word, Stretch here, int farthest, Post post, List<Amount> amounts) {
    return amounts.stream()
        .filter(lengths::mayBeOfAChange)
        .filter(one -> here.first() <= post.at(one) && post.at(one) <= here.last())
        .filter(one -> Math.abs(post.at(one) - word) <= farthest)
        .filter(one -> !isDistance(one, here, post))
        .min(Comparator.comparingInt(one -> Math.abs(post.at(one) - word)));
  }

  /** "1 cm from the edge". */
  private static boolean isDistance(Amount amount, Stretch here, Post post) {
    int next = Whereabouts.wordAt(post, amount.span().to() - 1) + 1;
    return next <= here.last()
        && post.lists().has("distance after a length", post.words().get(next).plain());
  }

  /** Told as done: not planned, asked or denied. */
  private static boolean isDone(Mention way, Post post) {
    int from = Math.max(Whereabouts.clauseStart(post, way.first()), way.first() - FARTHEST_PLAN);
    for (int i = from; i < way.first(); i++) {
      if (post.lists().has("not tried", post.words().get(i).plain()) && !isAble(i, way, post)) {
        return false;
      }
    }
    return true;
  }

  /** "I can pin 3 cm out, and then it lies flat": told of what was seen, unless it only would. */
  private static boolean isAble(int word, Mention way, Post post) {
    return word > 0
        && post.lists().has("able to hold", post.words().get(word).plain())
        && post.lists().has("doers", post.words().get(word - 1).plain())
        && !post.says(
            "only supposed", new Stretch(way.last(), post.sentenceOf(way.last()).last()), LONGEST);
  }
}
