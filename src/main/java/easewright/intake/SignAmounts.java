package easewright.intake;

import easewright.english.Stretch;
import easewright.english.WordGaps;
import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.rulebook.Catalog.SignEntry;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds the length that a post states of a sign. */
final class SignAmounts {
  private static final int FARTHEST_AMOUNT = 10;
  private static final int FARTHEST_NEXT = 16;

  /** Words of the longest amount: "a couple of inches and three quarters". */
  private static final int LONGEST_AMOUNT = 16;

  private final Map<String, SignEntry> catalog;
  private final Lexicon lexicon;
  private final PlacesSaid places;
  private final double mostAmountMm;

  SignAmounts(Map<String, SignEntry> catalog, Lexicon lexicon, PlacesSaid places) {
    this.places = places;
    this.catalog = catalog;
    this.lexicon = lexicon;
    this.mostAmountMm = lexicon.bounds().of("largest-amount-of-a-sign-read");
  }

  /**
   * The nearest length of the sentence, else that of the next one if it says more of the sign; of a
   * sign that is a difference of left and right, what two lengths differ by.
   */
  AmountRead of(Match match, Post post, List<Amount> amounts, List<Match> said) {
    String sign = match.saying().of();
    int sentence = post.sentence()[match.head()];
    if (post.lists().has("differences of left and right", sign)) {
      Optional<Amount> difference =
          SidesCompared.difference(sentence, post, amounts)
              .or(() -> SidesCompared.difference(sentence + 1, post, amounts));
      if (difference.filter(one -> one.mm("mm") <= mostAmountMm).isPresent()) {
        return AmountRead.of(difference.get(), "mm", 1);
      }
    }
    return nearest(match, post, amounts, said, sentence, FARTHEST_AMOUNT)
        .or(
            () ->
                nearest(match, post, amounts, said, sentence + 1, FARTHEST_NEXT)
                    .filter(one -> saysMoreOfIt(one, sentence + 1, post)))
        .map(one -> inFull(sign, one, post, amounts))
        .orElse(null);
  }

  /** What a length comes to: of a fold both layers, at each place or in all. */
  AmountRead inFull(String sign, Amount amount, Post post, List<Amount> amounts) {
    if (FoldedCloth.isInAll(amount, post)) {
      return places.ofAllOfSign(sign, amount);
    }
    if (post.lists().has("signs of the whole way round", sign)) {
      Optional<Amount> sum = FoldedCloth.ofBothSides(amount, post, amounts);
      if (sum.isPresent()) {
        return AmountRead.of(sum.get(), "mm", 1);
      }
    }
    Amount all = FoldedCloth.total(amount, post, amounts);
    boolean perSide = catalog.get(sign).perSide();
    if (perSide && !all.equals(amount) && FoldedCloth.isCloth(all, post)) {
      return places.ofFoldOfSign(all, amount, post);
    }
    boolean fold = !FoldedCloth.bothLayers(amount, post).equals(amount);
    if (!perSide && fold && !all.equals(amount) && !FoldedCloth.isInAll(all, post)) {
      return places.ofFoldOfSign(all, amount, post);
    }
    Amount total = perSide ? amount : all;
    return total.equals(amount)
        ? places.ofSign(sign, FoldedCloth.bothLayers(amount, post), post)
        : AmountRead.of(total, "mm", 1);
  }

  private Optional<Amount> nearest(
      Match match, Post post, List<Amount> amounts, List<Match> said, int sentence, int farthest) {
    List<Amount> here =
        amounts.stream().filter(one -> Lengths.sentenceOf(one, post) == sentence).toList();
    boolean now = here.stream().anyMatch(one -> isNow(one, post));
    return here.stream()
        .filter(Amount::isLength)
        .filter(one -> !now || isNow(one, post))
        .filter(one -> distance(one, match, post) <= farthest)
        .filter(one -> one.quantity("mm").map(q -> q.length().mm()).orElse(1e9) <= mostAmountMm)
        .filter(one -> isFree(one, match, said, post))
        .min(Comparator.comparingInt(one -> distance(one, match, post)));
  }

  /** "Before it was 3 cm, now it is 1 cm": the second. */
  static boolean isNow(Amount amount, Post post) {
    return amount.isLength()
        && post.cueInClause("now", Whereabouts.wordAt(post, amount.span().from()));
  }

  /** Whether no part is named up to the end of the clause of the length, and "it" or a pinch is. */
  private boolean saysMoreOfIt(Amount amount, int sentence, Post post) {
    int first = WordGaps.firstOf(sentence, post.sentence());
    int clauseEnd = Whereabouts.clauseEnd(post, Whereabouts.wordAt(post, amount.span().from()));
    if (post.mentions().from(first, clauseEnd).stream()
        .anyMatch(one -> AmountsTold.isPiece(one.name(), lexicon, post))) {
      return false;
    }
    int to = WordGaps.firstOf(sentence + 1, post.sentence());
    return post.says("more of it", new Stretch(first, to - 1));
  }

  /** A length is told of the sign it stands nearest to, and of no other. */
  private boolean isFree(Amount amount, Match match, List<Match> said, Post post) {
    int own = distance(amount, match, post);
    return said.stream()
        .filter(other -> isWithin(other, amount, own, post))
        .filter(other -> !other.saying().of().equals(match.saying().of()))
        .filter(other -> catalog.get(other.saying().of()).amount() != null)
        .filter(other -> distance(amount, other, post) < own)
        .noneMatch(other -> isTold(amount, other, post));
  }

  /** Whether a sign may be nearer to a length than so many words; looks at its ends only. */
  private static boolean isWithin(Match sign, Amount amount, int words, Post post) {
    int at = Whereabouts.wordAt(post, amount.span().from());
    return sign.first() <= at + words + LONGEST_AMOUNT && sign.last() >= at - words - 1;
  }

  private static int distance(Amount amount, Match sign, Post post) {
    return Whereabouts.wordsBetween(post, amount.span(), post.span(sign.first(), sign.last()));
  }

  /** A sign denied, or spoken of in another sentence, takes no length from one that is there. */
  private boolean isTold(Amount amount, Match sign, Post post) {
    return Lengths.sentenceOf(amount, post) == post.sentence()[sign.head()]
        && !Polarity.isDenied(sign, post);
  }
}
