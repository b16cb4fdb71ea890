package easewright.diagnosis;

import easewright.body.CupGeometry;
import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.BodyMeasurements;
import easewright.measure.Measured;
import easewright.wording.Blanks;
import java.util.Optional;

/** Figures that set the body beside what the size cut is drafted for. */
final class BodyFormulas {
  private BodyFormulas() {}

  static Worked bustDifference(FittingNumbers n) {
    BodyMeasurements body = n.fitting().body();
    Measured bust = body.bust();
    Measured under = body.underbust();
    return new Worked(
        new Estimate(bust.differenceMm(under), bust.differenceSdMm(under)),
        Blanks.of("bust", bust.text()).and("underbust", under.text()));
  }

  static Worked cupShortfall(FittingNumbers n) {
    Estimate difference = n.figure(DerivedFigure.BUST_DIFFERENCE);
    double drafted = n.draft().differenceMm().orElseThrow();
    return new Worked(
        difference.minus(drafted),
        Blanks.of("difference", n.shown().length(difference.value()))
            .and("drafted", n.shown().length(drafted)));
  }

  /** Empty where the difference is too deep for a cap on this base: none is better than wrong. */
  static Optional<Worked> cupVolume(FittingNumbers n) {
    Estimate measured = n.figure(DerivedFigure.BUST_DIFFERENCE);
    double difference = measured.value();
    double sd = measured.sd();
    if (!(difference > 0)) {
      return Optional.empty();
    }
    double share = n.parameter("cup-base-share");
    double base = n.fitting().body().bustPointWidth().value().mm() * share;
    double step = Math.min(sd, difference / 2);
    try {
      double up = CupGeometry.fromDifference(base, difference + step).volumeMl();
      double down = CupGeometry.fromDifference(base, difference - step).volumeMl();
      double volume = CupGeometry.fromDifference(base, difference).volumeMl();
      return Optional.of(
          new Worked(
              new Estimate(volume, (up - down) / 2 * (sd / step)),
              Blanks.of("base", n.shown().length(base))
                  .and("share", n.shown().percent(share))
                  .and("difference", n.shown().length(difference))));
    } catch (IllegalArgumentException outsideTheModel) {
      return Optional.empty();
    }
  }

  static Worked bandShortfall(FittingNumbers n) {
    return excess(
        n, n.fitting().body().underbust(), n.draft().underbustMm().orElseThrow(), "underbust");
  }

  static Worked bustPointWidthExcess(FittingNumbers n) {
    return excess(
        n,
        n.fitting().body().bustPointWidth(),
        n.draft().bustPointWidthMm().orElseThrow(),
        "measured");
  }

  static Worked apexDrop(FittingNumbers n) {
    return excess(
        n,
        n.fitting().body().shoulderToBustPoint(),
        n.draft().shoulderToBustPointMm().orElseThrow(),
        "measured");
  }

  static Worked frontLengthShortfall(FittingNumbers n) {
    return excess(
        n,
        n.fitting().body().shoulderToUnderbust(),
        n.draft().shoulderToUnderbustMm().orElseThrow(),
        "measured");
  }

  private static Worked excess(
      FittingNumbers n, Measured measured, double draftedMm, String blank) {
    return new Worked(
        new Estimate(measured.value().mm() - draftedMm, measured.sdMm()),
        Blanks.of(blank, measured.text()).and("drafted", n.shown().length(draftedMm)));
  }
}
