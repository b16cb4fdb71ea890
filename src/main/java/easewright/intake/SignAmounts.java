package easewright.intake;

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
  private final double mostAmountMm;

  SignAmounts(Map<String, SignEntry> catalog, Lexicon lexicon) {
    this.catalog = catalog;
    this.lexicon = lexicon;
    this.mostAmountMm = lexicon.bounds().of("largest-amount-of-a-sign-read");
  }

  /** The nearest length of the sentence, else that of the next one if it says "it" of the sign. */
  String of(Match match, Post post, List<Amount> amounts, List<Match> said) {
    int sentence = post.sentence()[match.head()];
    return nearest(match, post, amounts, said, sentence, FARTHEST_AMOUNT)
        .or(
            () ->
                saysMoreOfIt(sentence + 1, post)
                    ? nearest(match, post, amounts, said, sentence + 1, FARTHEST_NEXT)
                    : Optional.empty())
        .map(one -> inAll(one, match, post))
        .map(one -> one.text("mm"))
        .orElse(null);
  }

  /** "A 1 cm pinch on each side" takes up 2 cm of a piece that has no sides of its own. */
  private Amount inAll(Amount amount, Match match, Post post) {
    boolean pinched = false;
    Stretch clause = post.clauseOf(Whereabouts.wordAt(post, amount.span().from()));
    for (int i = clause.first(); i <= clause.last(); i++) {
      pinched |= post.lists().has("pinched", post.words().get(i).plain());
    }
    boolean whole = !catalog.get(match.saying().of()).sided();
    return whole && pinched && amount.isPerSide(post) ? amount.doubled() : amount;
  }

  private Optional<Amount> nearest(
      Match match, Post post, List<Amount> amounts, List<Match> said, int sentence, int farthest) {
    return amounts.stream()
        .filter(Amount::isLength)
        .filter(one -> Lengths.sentenceOf(one, post) == sentence)
        .filter(one -> distance(one, match, post) <= farthest)
        .filter(one -> one.quantity("mm").map(q -> q.length().mm()).orElse(1e9) <= mostAmountMm)
        .filter(one -> isFree(one, match, said, post))
        .min(Comparator.comparingInt(one -> distance(one, match, post)));
  }

  private boolean saysMoreOfIt(int sentence, Post post) {
    if (post.mentions(sentence, sentence).stream().anyMatch(one -> lexicon.isPart(one.name()))) {
      return false;
    }
    int to = WordGaps.firstOf(sentence + 1, post.sentence());
    for (int i = WordGaps.firstOf(sentence, post.sentence()); i < to; i++) {
      if (post.lists().has("more of it", post.words().get(i).plain())) {
        return true;
      }
    }
    return false;
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
