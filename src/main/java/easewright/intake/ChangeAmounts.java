package easewright.intake;

import easewright.english.Break;
import easewright.english.Stretch;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.TextSpan;
import easewright.rulebook.RuleBookSource;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds by how much a change was made or tried. */
final class ChangeAmounts {
  private static final int FARTHEST_AMOUNT = 4;
  private static final int FARTHEST_TAKEN_UP = 14;

  /** "Taking up about 2 cm". */
  private static final int BEFORE = 3;

  private final PlacesSaid places;
  private final double mostMm;

  ChangeAmounts(RuleBookSource book, Lexicon lexicon) {
    this.places = new PlacesSaid(book, lexicon.lists());
    this.mostMm = lexicon.bounds().of("largest-change-read");
  }

  /** The amount within the phrase or right beside it, no new thing being spoken of between. */
  Optional<Amount> nearest(int from, int to, Post post, List<Amount> amounts) {
    TextSpan span = post.span(from, to);
    return amounts.stream()
        .filter(this::mayBeOfAChange)
        .filter(one -> isBeside(one, from, to, post))
        .min(Comparator.comparingInt(one -> Whereabouts.wordsBetween(post, one.span(), span)));
  }

  /** Whether a length is no longer than a change can be. */
  boolean mayBeOfAChange(Amount amount) {
    return amount.isLength() && amount.mm("mm") <= mostMm;
  }

  /** The amount of a change, with the places at which it counts; null where none is told. */
  AmountRead of(String id, Optional<Amount> amount, Post post) {
    return amount.map(one -> places.ofChange(id, one, post)).orElse(null);
  }

  /** The amount of cloth held out: all of it, where the sentence says what it comes to. */
  AmountRead heldOut(String id, Amount amount, Post post, List<Amount> amounts) {
    Amount total = FoldedCloth.total(amount, post, amounts);
    if (FoldedCloth.isInAll(total, post)) {
      return places.ofTotal(id, total, post);
    }
    if (total.equals(amount)) {
      return places.ofChange(id, FoldedCloth.bothLayers(amount, post), post);
    }
    return FoldedCloth.isCloth(total, post)
        ? places.ofFold(id, total, amount, post)
        : places.ofTotal(id, total, post);
  }

  /** The amount of a trial; of one made with a fold, all the cloth of it. */
  AmountRead ofTrial(String id, Optional<Amount> amount, Post post, List<Amount> amounts) {
    boolean folded =
        amount
            .map(one -> post.sentenceOf(Whereabouts.wordAt(post, one.span().from())))
            .filter(sentence -> FoldedCloth.namesFold(sentence, post))
            .isPresent();
    if (folded) {
      return heldOut(id, amount.get(), post, amounts);
    }
    return amount.isPresent() && FoldedCloth.isInAll(amount.get(), post)
        ? places.ofTotal(id, amount.get(), post)
        : of(id, amount, post);
  }

  /** "A tuck across the back, taking up 2 cm": told farther on in the sentence or in the next. */
  Optional<Amount> takenUp(int last, Post post, List<Amount> amounts) {
    int end = post.sentenceOf(last).last();
    boolean goesOn =
        end + 1 < post.words().size()
            && post.lists().has("more of it", post.words().get(end + 1).plain());
    int to = goesOn ? post.sentenceOf(end + 1).last() : end;
    return amounts.stream()
        .filter(this::mayBeOfAChange)
        .filter(
            one -> {
              int first = Whereabouts.wordAt(post, one.span().from());
              return last < first && first <= Math.min(to, last + FARTHEST_TAKEN_UP);
            })
        .filter(one -> isTakenUp(one, post))
        .findFirst();
  }

  private static boolean isTakenUp(Amount amount, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int next = Whereabouts.wordAt(post, amount.span().to() - 1) + 1;
    int from = Math.max(post.sentenceOf(first).first(), first - BEFORE);
    return post.says("takes up cloth", new Stretch(from, first - 1))
        || FoldedCloth.isCloth(amount, post)
        || next < post.words().size()
            && post.lists().has("way of a change", post.words().get(next).plain());
  }

  private static boolean isBeside(Amount amount, int from, int to, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    if (first > to) {
      Break strongest = post.strongest(to, first - 1);
      return first - to - 1 <= FARTHEST_AMOUNT
          && strongest == Break.NONE
          && post.breaks().get(first).compareTo(Break.PAUSE) <= 0
          && !isMaterial(post, last);
    }
    return from - last - 1 <= FARTHEST_AMOUNT
        && post.strongest(Math.min(last, from), from) == Break.NONE
        && (last > from || !isMaterial(post, last));
  }

  /** "3 cm elastic" is what it is made of, not by how much it was changed. */
  private static boolean isMaterial(Post post, int last) {
    return last + 1 < post.words().size()
        && post.lists().has("made of so much", post.words().get(last + 1).plain());
  }
}
