package easewright.intake;

import easewright.intake.Reading.ClothRead;
import easewright.intake.Reading.LengthRead;
import easewright.number.Amount;
import easewright.number.TextSpan;
import java.util.BitSet;
import java.util.List;
import java.util.stream.Stream;

/** Amounts of a text that nothing has taken yet. */
final class AmountsLeft {
  private AmountsLeft() {}

  /** Amounts that no trial and no earlier toile has taken. */
  static List<Amount> untaken(List<Amount> amounts, BitSet taken, Post post) {
    return amounts.stream()
        .filter(one -> !taken.get(Whereabouts.wordAt(post, one.span().from())))
        .toList();
  }

  /** Amounts that are part of nothing else: "36D" measures no body. */
  static List<Amount> free(List<Amount> amounts, List<TextSpan> taken) {
    return amounts.stream()
        .filter(
            one ->
                taken.stream()
                    .noneMatch(
                        span -> span.from() <= one.span().from() && one.span().from() < span.to()))
        .toList();
  }

  /** Amounts that are neither part of a stretch test nor a measurement. */
  static List<Amount> unmeasured(
      List<Amount> amounts, List<ClothRead> cloths, List<LengthRead> measured) {
    return free(
        amounts,
        Stream.concat(cloths.stream().map(ClothRead::span), measured.stream().map(LengthRead::span))
            .toList());
  }
}
