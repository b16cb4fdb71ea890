package easewright.intake;

import easewright.english.Stretch;
import easewright.number.Amount;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/** How much cloth a fold takes up: both its layers, at all its places. */
final class FoldedCloth {
  /** Two lengths are double each other within what a tape shows. */
  private static final double NEAR = 0.03;

  /** "1 cm deep", "1 cm of depth". */
  private static final int NEXT = 2;

  /** "Standing out about 14 mm". */
  private static final int BEFORE = 3;

  /** As far after an amount as words may say that it is all of it. */
  private static final int FARTHEST = 8;

  /** Words of the longest phrase for one of two sides. */
  private static final int LONGEST = 4;

  private static final String IN_ALL = "in all";

  private FoldedCloth() {}

  /**
   * The length, or the one that the sentence later says it comes to: "2 cm folded, so 4 cm of
   * cloth", "2 cm a side, 4 cm in all".
   */
  static Amount total(Amount amount, Post post, List<Amount> amounts) {
    // Of a length put right in a later sentence, that sentence says what it comes to.
    int sentence = post.sentence()[Whereabouts.wordAt(post, amount.span().to() - 1)];
    Amount total = amount;
    for (Amount one : amounts) {
      if (Lengths.sentenceOf(one, post) == sentence && isInAll(one, post)) {
        return one.unit() == null
            ? new Amount(one.number(), one.most(), amount.unit(), one.span())
            : one;
      }
    }
    for (Amount one : amounts) {
      boolean later = one.span().from() > total.span().from();
      String unit = one.unit() == null ? total.unit() : one.unit();
      double twice = 2 * total.mm(total.unit());
      if (later
          && Lengths.sentenceOf(one, post) == sentence
          && Math.abs(one.mm(unit) - twice) <= NEAR * twice) {
        total = new Amount(one.number(), one.most(), unit, one.span());
      }
    }
    return total;
  }

  /**
   * The sum of "1.3 cm on one side and 1.2 on the other", where the length is the first of both.
   */
  static Optional<Amount> ofBothSides(Amount amount, Post post, List<Amount> amounts) {
    if (!isSaidOf("of one side", amount, post)) {
      return Optional.empty();
    }
    int sentence = Lengths.sentenceOf(amount, post);
    return amounts.stream()
        .filter(one -> one.span().from() > amount.span().from())
        .filter(one -> Lengths.sentenceOf(one, post) == sentence)
        .filter(one -> one.unit() == null || one.isLength())
        .filter(one -> isSaidOf("of the other side", one, post))
        .findFirst()
        .map(
            one -> {
              double both = amount.mm("mm") + one.mm(amount.unit());
              String mm =
                  BigDecimal.valueOf(both).setScale(1, RoundingMode.HALF_UP).toPlainString();
              return new Amount(mm, "mm", amount.span().with(one.span()));
            });
  }

  private static boolean isSaidOf(String list, Amount amount, Post post) {
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    int to = Math.min(post.sentenceOf(last).last(), last + FARTHEST);
    int end = last;
    while (end < to && !isNumber(end + 1, post)) {
      end++;
    }
    return post.says(list, new Stretch(last + 1, end), LONGEST);
  }

  /** "2 cm out altogether", "together 4 cm". */
  static boolean isInAll(Amount amount, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    Stretch clause = post.clauseOf(last);
    if (first > 0 && isInAll(first - 1, post.sentenceOf(first), post)) {
      return true;
    }
    for (int i = last + 1;
        i <= Math.max(Math.min(clause.last(), last + FARTHEST), last + NEXT);
        i++) {
      boolean another = i > post.sentenceOf(last).last() || isNumber(i, post);
      if (another || isInAll(i, post.sentenceOf(last), post)) {
        return !another;
      }
    }
    return false;
  }

  /** Whether a word is a number, or a fraction stands before it, which is no word: "⅜ a side". */
  static boolean isNumber(int word, Post post) {
    int from = post.words().get(word).from();
    int before = word == 0 ? 0 : post.words().get(word - 1).to();
    return Character.isDigit(post.text().charAt(from))
        || post.text().substring(before, from).chars().anyMatch(FoldedCloth::isFraction);
  }

  private static boolean isFraction(int character) {
    return Character.getType(character) == Character.OTHER_NUMBER;
  }

  private static boolean isInAll(int word, Stretch sentence, Post post) {
    if (word < sentence.first()) {
      return false;
    }
    StringBuilder phrase = new StringBuilder();
    for (int i = word; i <= Math.min(sentence.last(), word + LONGEST - 1); i++) {
      phrase.append(i == word ? "" : " ").append(post.words().get(i).plain());
      if (post.lists().has(IN_ALL, phrase.toString())) {
        return true;
      }
    }
    return false;
  }

  /** "So 2 cm of edge": the cloth of a fold told before, both its layers. */
  static boolean isCloth(Amount amount, Post post) {
    return isSaidOf("so much cloth", amount, post);
  }

  /** Twice the depth of a fold, and any other length as it is. */
  static Amount bothLayers(Amount amount, Post post) {
    int first = Whereabouts.wordAt(post, amount.span().from());
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    Stretch sentence = post.sentenceOf(last);
    boolean deep = false;
    boolean fold = false;
    boolean stands = false;
    for (int i = sentence.first(); i <= sentence.last(); i++) {
      String word = post.words().get(i).plain();
      deep |= i > last && i <= last + NEXT && post.lists().has("depth of a fold", word);
      fold |= post.lists().has("pinched", word);
      stands |= i >= first - BEFORE && i < first && post.lists().has("a fold stands", word);
    }
    Stretch told = new Stretch(before(sentence, post), sentence.last());
    boolean depth = deep && fold || stands && namesFold(told, post);
    return depth ? amount.doubled() : amount;
  }

  /** First word of the sentence before, where the fold may be named: "It stands 7 mm high." */
  private static int before(Stretch sentence, Post post) {
    return sentence.first() == 0 ? 0 : post.sentenceOf(sentence.first() - 1).first();
  }

  /** Whether cloth is said to be folded, not only spare. */
  static boolean namesFold(Stretch here, Post post) {
    return post.says("folds of cloth", here);
  }
}
