package easewright.intake;

import easewright.english.Stretch;
import easewright.number.Amount;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/** Finds by how much left and right differ where both were measured: "left 11.5 cm, right 12.5". */
final class SidesCompared {
  private static final String LEFT = "left";
  private static final String RIGHT = "right";

  private SidesCompared() {}

  /** The difference of the lengths of a sentence that stand alone beside "left" and "right". */
  static Optional<Amount> difference(int sentence, Post post, List<Amount> amounts) {
    List<Amount> here =
        amounts.stream()
            .filter(one -> !"%".equals(one.unit()))
            .filter(one -> Lengths.sentenceOf(one, post) == sentence)
            .toList();
    String unit = here.stream().filter(Amount::isLength).map(Amount::unit).findFirst().orElse(null);
    Optional<Amount> left = beside(LEFT, RIGHT, here, post);
    Optional<Amount> right = beside(RIGHT, LEFT, here, post);
    if (unit == null || left.isEmpty() || right.isEmpty()) {
      return Optional.empty();
    }
    double differ = Math.abs(left.get().mm(unit) - right.get().mm(unit));
    String mm = BigDecimal.valueOf(differ).setScale(1, RoundingMode.HALF_UP).toPlainString();
    return differ > 0
        ? Optional.of(new Amount(mm, "mm", left.get().span().with(right.get().span())))
        : Optional.empty();
  }

  /** The one length whose clause names this side and not the other. */
  private static Optional<Amount> beside(
      String side, String other, List<Amount> amounts, Post post) {
    List<Amount> found =
        amounts.stream()
            .filter(one -> isNamed(side, one, post) && !isNamed(other, one, post))
            .toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }

  private static boolean isNamed(String side, Amount amount, Post post) {
    Stretch clause = post.clauseOf(Whereabouts.wordAt(post, amount.span().from()));
    return post.words().subList(clause.first(), clause.last() + 1).stream()
        .anyMatch(one -> one.plain().equals(side));
  }
}
