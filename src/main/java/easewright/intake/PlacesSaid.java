package easewright.intake;

import easewright.number.Amount;
import easewright.number.AmountRead;
import easewright.number.WordLists;
import easewright.rulebook.Catalog.AdjustmentEntry;
import easewright.rulebook.Catalog.SignEntry;
import easewright.rulebook.RuleBookSource;
import java.util.Map;

/** At how many places an amount was said to be: "1 cm on each side" is at two. */
final class PlacesSaid {
  /** How many words before or after a length may say where it is so. */
  private static final int FARTHEST = 6;

  /** As many words before the length of a fold may say at how many places it was pinched. */
  private static final int FARTHEST_FOLD = 20;

  private static final String WHOLE_WAY_ROUND = "signs of the whole way round";

  /** The longest phrase that says so, in words. */
  private static final int LONGEST = 5;

  private final Map<String, SignEntry> signs;
  private final Map<String, AdjustmentEntry> adjustments;
  private final Map<String, Double> places;

  PlacesSaid(RuleBookSource book, WordLists lists) {
    this.signs = book.catalog().signs();
    this.adjustments = book.catalog().adjustments();
    this.places = lists.numbers("places of an amount");
  }

  /** The amount of a change: counted at each place where it adds up, or is that of one side. */
  AmountRead ofChange(String id, Amount amount, Post post) {
    boolean addsUp =
        adjustments.get(id).perSide() || post.lists().has("changes of the whole way round", id);
    return AmountRead.of(amount, "mm", addsUp ? places(amount, post) : 1);
  }

  /**
   * The amount of a change that a length comes to: in all, unless what follows says at how many
   * places it does so: "6 mm folded, so 12 mm a side".
   */
  AmountRead ofTotal(String id, Amount total, Post post) {
    int places = placesAfter(total, post);
    return places > 1 ? AmountRead.of(total, "mm", places) : ofAll(id, total);
  }

  /**
   * The cloth that a fold takes up, at as many places as the fold or its cloth is told of: "1 cm
   * folded on each side, so 2 cm of edge".
   *
   * @param fold the length of the fold
   */
  AmountRead ofFold(String id, Amount cloth, Amount fold, Post post) {
    int places = Math.max(placesAfter(cloth, post), places(fold, post));
    return places > 1 ? AmountRead.of(cloth, "mm", places) : ofAll(id, cloth);
  }

  /** The same of a sign. */
  AmountRead ofFoldOfSign(Amount cloth, Amount fold, Post post) {
    return AmountRead.of(cloth, "mm", Math.max(placesAfter(cloth, post), places(fold, post)));
  }

  /** The amount of a change told in all: half of it on either side, where it is that of one. */
  AmountRead ofAll(String id, Amount amount) {
    return adjustments.get(id).perSide()
        ? AmountRead.of(amount.halved(), "mm", 2)
        : AmountRead.of(amount, "mm", 1);
  }

  /** The amount of a sign told in all. */
  AmountRead ofAllOfSign(String id, Amount amount) {
    return signs.get(id).perSide()
        ? AmountRead.of(amount.halved(), "mm", 2)
        : AmountRead.of(amount, "mm", 1);
  }

  /** The amount of a sign: cloth pinched up at two places is twice as much. */
  AmountRead ofSign(String id, Amount amount, Post post) {
    SignEntry sign = signs.get(id);
    if (post.lists().has(WHOLE_WAY_ROUND, id)) {
      return AmountRead.of(amount, "mm", placesInSentence(amount, post));
    }
    boolean addsUp = sign.perSide() || !sign.sided() && isPinched(amount, post);
    return AmountRead.of(amount, "mm", addsUp ? places(amount, post) : 1);
  }

  private static boolean isPinched(Amount amount, Post post) {
    return post.says("pinched", post.clauseOf(Whereabouts.wordAt(post, amount.span().from())));
  }

  /**
   * The same, also by words farther before it: "at each side seam, band and elastic, 11 mm deep".
   */
  private int placesInSentence(Amount amount, Post post) {
    int near = places(amount, post);
    int first = Whereabouts.wordAt(post, amount.span().from());
    return near > 1
        ? near
        : places(Math.max(post.sentenceOf(first).first(), first - FARTHEST_FOLD), first - 1, post);
  }

  /** By the words right after it in its sentence, else by those before it in its clause. */
  private int places(Amount amount, Post post) {
    int after = placesAfter(amount, post);
    if (after > 1) {
      return after;
    }
    int first = Whereabouts.wordAt(post, amount.span().from());
    return places(Math.max(post.clauseOf(first).first(), first - FARTHEST), first - 1, post);
  }

  private int placesAfter(Amount amount, Post post) {
    int last = Whereabouts.wordAt(post, amount.span().to() - 1);
    int to = Math.min(post.sentenceOf(last).last(), last + FARTHEST);
    return places(last + 1, upToANumber(last + 1, to, post), post);
  }

  /** What is said after another length is said of that one. */
  private static int upToANumber(int from, int to, Post post) {
    for (int i = from; i <= to; i++) {
      if (FoldedCloth.isNumber(i, post)) {
        return i - 1;
      }
    }
    return to;
  }

  private int places(int from, int to, Post post) {
    for (int i = from; i <= to; i++) {
      // "3 cm in all, not per side"
      if (i > 0 && post.lists().has("before a wrong number", post.words().get(i - 1).plain())) {
        continue;
      }
      StringBuilder phrase = new StringBuilder();
      Double longest = null; // "each other" is no "each"
      for (int end = i; end <= Math.min(to, i + LONGEST - 1); end++) {
        phrase.append(end == i ? "" : " ").append(post.words().get(end).plain());
        longest = places.getOrDefault(phrase.toString(), longest);
      }
      if (longest != null) {
        return longest.intValue();
      }
    }
    return 1;
  }
}
