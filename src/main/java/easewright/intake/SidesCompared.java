package easewright.intake;

import easewright.english.WordGaps;
import easewright.number.Amount;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds two lengths that a sentence compares: of left and right, of before and after. */
final class SidesCompared {
  private static final String LEFT = "left";
  private static final String RIGHT = "right";

  /**
   * Two lengths of one sentence.
   *
   * @param unit of those that have none of their own
   */
  record Pair(Amount one, Amount other, String unit) {
    /** By how much the first is longer; negative where it is shorter; mm. */
    double differMm() {
      return one.mm(unit) - other.mm(unit);
    }
  }

  private SidesCompared() {}

  /** The difference of the lengths of a sentence that are told of "left" and of "right". */
  static Optional<Amount> difference(int sentence, Post post, List<Amount> amounts) {
    return pair(LEFT, RIGHT, sentence, post, amounts)
        .filter(pair -> pair.differMm() != 0)
        .map(
            pair -> {
              String mm =
                  BigDecimal.valueOf(Math.abs(pair.differMm()))
                      .setScale(1, RoundingMode.HALF_UP)
                      .toPlainString();
              return new Amount(mm, "mm", pair.one().span().with(pair.other().span()));
            });
  }

  /** The lengths of a sentence that are told of one word and of another. */
  static Optional<Pair> pair(
      String one, String other, int sentence, Post post, List<Amount> amounts) {
    List<Amount> here =
        amounts.stream()
            .filter(each -> !"%".equals(each.unit()))
            .filter(each -> Lengths.sentenceOf(each, post) == sentence)
            .toList();
    String unit = here.stream().filter(Amount::isLength).map(Amount::unit).findFirst().orElse(null);
    List<Integer> sides = named(List.of(one, other), sentence, post);
    if (unit == null || sides.isEmpty()) {
      return Optional.empty();
    }
    // "Left 11 cm, right 12" or "11 cm on the left, 12 on the right": a sentence keeps its way.
    boolean first = sides.get(0) < post.at(here.get(0));
    Optional<Amount> ofOne = of(one, sides, here, first, post);
    return of(other, sides, here, first, post)
        .flatMap(ofOther -> ofOne.map(its -> new Pair(its, ofOther, unit)));
  }

  private static List<Integer> named(List<String> words, int sentence, Post post) {
    List<Integer> named = new ArrayList<>();
    for (int i = WordGaps.firstOf(sentence, post.sentence());
        i < WordGaps.firstOf(sentence + 1, post.sentence());
        i++) {
      if (words.contains(post.words().get(i).plain())) {
        named.add(i);
      }
    }
    return named;
  }

  /** The length next to a side, before any other side is named; none where it is named twice. */
  private static Optional<Amount> of(
      String side, List<Integer> sides, List<Amount> amounts, boolean after, Post post) {
    List<Integer> own =
        sides.stream().filter(one -> post.words().get(one).plain().equals(side)).toList();
    if (own.size() != 1) {
      return Optional.empty();
    }
    int here = own.get(0);
    int place = sides.indexOf(here);
    if (after) {
      int next = place + 1 < sides.size() ? sides.get(place + 1) : post.words().size();
      return amounts.stream().filter(one -> here < post.at(one) && post.at(one) < next).findFirst();
    }
    int before = place > 0 ? sides.get(place - 1) : -1;
    return amounts.stream()
        .filter(one -> before < post.at(one) && post.at(one) < here)
        .reduce((one, later) -> later);
  }
}
