package easewright.diagnosis;

import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.Length;
import easewright.wording.Blanks;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** Figures that set the finished garment beside its draft. */
final class DraftFormulas {
  private DraftFormulas() {}

  static Worked underband(FittingNumbers n) {
    return over(n, n.fitting().garment().underband(), "underband");
  }

  static Worked bandCloth(FittingNumbers n) {
    return over(n, n.fitting().garment().bandCloth(), "underband");
  }

  static Worked bust(FittingNumbers n) {
    return over(n, n.fitting().garment().bust(), "bust");
  }

  static Worked strapWidth(FittingNumbers n) {
    double width = n.fitting().garment().strapWidth().mm();
    return new Worked(new Estimate(width, n.parameter("strap-width-error")), Blanks.NONE);
  }

  static Worked strapWidthOverDrafted(FittingNumbers n) {
    return over(
        n,
        n.fitting().garment().strapWidth(),
        n.draft().draftedMm("strapWidth").orElseThrow(),
        n.parameter("strap-width-error"));
  }

  static Worked strapLengthOverDrafted(FittingNumbers n) {
    return over(
        n,
        n.fitting().garment().strapLength(),
        n.draft().draftedMm("strapLength").orElseThrow(),
        n.draft().garmentErrorMm());
  }

  private static Worked over(FittingNumbers n, Length finished, String term) {
    return over(n, finished, n.draft().draftedMm(term).orElseThrow(), n.draft().garmentErrorMm());
  }

  private static Worked over(FittingNumbers n, Length finished, double drafted, double sdMm) {
    return new Worked(
        new Estimate(finished.mm() - drafted, sdMm),
        Blanks.of("finished", n.shown().length(finished.mm()))
            .and("drafted", n.shown().length(drafted)));
  }

  /** The girth that is furthest from its draft, in parts of what is much for it. */
  static Optional<Worked> distance(FittingNumbers n) {
    return parts(n).max(Comparator.comparingDouble(part -> Math.abs(part.result().value())));
  }

  /** The girth that lies furthest above its draft, or least below it. */
  static Optional<Worked> greatest(FittingNumbers n) {
    return parts(n).max(Comparator.comparingDouble(part -> part.result().value()));
  }

  private static Stream<Worked> parts(FittingNumbers n) {
    return Stream.of(
            part(n, DerivedFigure.BUST_OVER_DRAFTED, "much-off-the-drafted-bust"),
            part(
                n,
                ofTheBand(n).orElse(DerivedFigure.UNDERBAND_OVER_DRAFTED),
                "much-off-the-drafted-underband"))
        .flatMap(Optional::stream);
  }

  private static Optional<Worked> part(FittingNumbers n, DerivedFigure figure, String much) {
    if (!figure.isGiven(n)) {
      return Optional.empty();
    }
    Estimate over = n.figure(figure);
    double whole = n.parameter(much);
    return Optional.of(
        new Worked(
            new Estimate(over.value() / whole, over.sd() / whole),
            Blanks.of("working", n.working(figure)).and("much", n.shown().length(whole))));
  }

  /** The band, finished if it was measured so, else its cloth; empty where neither was. */
  private static Optional<DerivedFigure> ofTheBand(FittingNumbers n) {
    return Stream.of(DerivedFigure.UNDERBAND_OVER_DRAFTED, DerivedFigure.BAND_CLOTH_OVER_DRAFTED)
        .filter(figure -> figure.isGiven(n))
        .findFirst();
  }

  /** How far the garment is off its draft: of the band if it was measured, else of the bust. */
  static Optional<Worked> amount(FittingNumbers n) {
    DerivedFigure figure = ofTheBand(n).orElse(DerivedFigure.BUST_OVER_DRAFTED);
    if (!figure.isGiven(n)) {
      return Optional.empty();
    }
    Estimate over = n.figure(figure);
    return Optional.of(
        new Worked(
            new Estimate(Math.abs(over.value()), over.sd()),
            Blanks.of("working", n.working(figure))));
  }
}
