package easewright.diagnosis;

import easewright.body.CupGeometry;
import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.Sides;
import easewright.measure.Measured;
import easewright.wording.Blanks;
import java.util.Optional;

/** How much more or less room both cups take, from the girths and a spherical cap. */
final class CupAmounts {
  private CupAmounts() {}

  static Worked more(FittingNumbers n) {
    return change(n, 1);
  }

  static Worked less(FittingNumbers n) {
    return change(n, -1);
  }

  /** How much more the larger half of the bust measures; empty where they hardly differ. */
  static Optional<Worked> sidesDiffer(FittingNumbers n) {
    Sides sides = Sides.of(n.fitting());
    return sides.differ(n.parameter("sides-differ"))
        ? Optional.of(new Worked(new Estimate(sides.byMm(), sides.sdMm()), Blanks.NONE))
        : Optional.empty();
  }

  /**
   * The girth to change by, with what the seam over the apex and the depth change along with it.
   */
  private static Worked change(FittingNumbers n, int way) {
    Estimate shortfall = n.figure(DerivedFigure.CUP_SHORTFALL);
    double girth = way * shortfall.value();
    return new Worked(
        new Estimate(girth, shortfall.sd()),
        Blanks.of("shortfall", n.shown().length(girth))
            .and("shares", shapedEdges(n))
            .and("arc", n.shown().length(girth * CupGeometry.arcPerDifference()))
            .and("depth", depth(n, girth)));
  }

  private static int shapedEdges(FittingNumbers numbers) {
    int usual = (int) numbers.parameter("usual-shaped-edges");
    return numbers
        .draft()
        .cut()
        .map(
            cut ->
                cut.share(1, "shaped-seam").stream()
                    .filter(share -> !share.copy())
                    .mapToInt(share -> share.piece().occurrences())
                    .sum())
        .filter(n -> n > 0)
        .orElse(usual);
  }

  /** How far a cup's depth changes with its girth, in words; nothing where the base is unknown. */
  private static String depth(FittingNumbers n, double girthMm) {
    Measured width = n.fitting().body().bustPointWidth();
    double difference = n.figure(DerivedFigure.BUST_DIFFERENCE).value();
    if (width == null || !(difference > 0)) {
      return "";
    }
    double base = width.value().mm() * n.parameter("cup-base-share");
    try {
      double perMm = CupGeometry.fromDifference(base, difference).projectionPerDifference();
      return n.source()
          .wording()
          .say("amount-cup-depth", Blanks.of("depth", n.shown().length(girthMm * perMm)));
    } catch (IllegalArgumentException outsideTheModel) {
      // Too deep for a cap on this base: no depth is better than a wrong one.
      return "";
    }
  }
}
