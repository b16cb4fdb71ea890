package easewright.diagnosis;

import easewright.body.BandFit;
import easewright.body.BandPressure;
import easewright.cloth.ElasticTest;
import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.Measured;
import easewright.wording.Blanks;
import java.util.Optional;

/** How much to take in or let out a band, and how much shorter to cut its elastic. */
final class BandAmounts {
  /** How far the band can be pulled off the body, as the wearer measured it. */
  static final Input PULLED_OFF = numbers -> numbers.figures().containsKey(BandAmounts.PULL);

  private static final String PULL = RuleWords.AMOUNT_OF + "band-pulls-off-the-body";

  private BandAmounts() {}

  /** How much longer the band measures than this body and the pattern's own stretch ask for. */
  static Worked lengthExcess(FittingNumbers n) {
    return toTarget(n, 1);
  }

  static Worked takeIn(FittingNumbers n) {
    return toTarget(n, 1);
  }

  static Worked letOut(FittingNumbers n) {
    return toTarget(n, -1);
  }

  /** Take-in (way +1) or let-out (way −1) that brings the band to the strain it is drafted for. */
  private static Worked toTarget(FittingNumbers n, int way) {
    Measured under = n.fitting().body().underbust();
    Estimate band = n.draft().underband().orElseThrow();
    double target = n.draft().bandStrain().orElseGet(() -> n.parameter("target-band-strain"));
    Estimate change =
        new BandFit(under.value().mm(), band.value(), under.sdMm(), band.sd()).takeInMm(target);
    // Where no pattern says how far its band is stretched, the target is a guess of its own.
    double guess = n.draft().bandStrain().isPresent() ? 0 : n.parameter("target-band-strain-error");
    double ofTheGuess = guess * under.value().mm() / ((1 + target) * (1 + target));
    return new Worked(
        new Estimate(way * change.value(), Math.hypot(change.sd(), ofTheGuess)),
        Blanks.of("underband", n.shown().length(band.value()))
            .and("underbust", under.text())
            .and("target", n.shown().percent(target)));
  }

  /**
   * From how far the band can be pulled off the body. The girth bears on it little, so a usual one
   * serves where none was measured, with the error that brings.
   */
  static Worked pullOff(FittingNumbers n) {
    Estimate gap = n.figure(PULL);
    Measured under = n.fitting().body().underbust();
    double girth = under == null ? n.parameter("usual-underbust") : under.value().mm();
    double girthSd = under == null ? n.parameter("usual-underbust-error") : under.sdMm();
    double normal = n.parameter("normal-pull-off");
    double slack = BandFit.pullOffSlackMm(girth, gap.value());
    double allowed = BandFit.pullOffSlackMm(girth, normal);
    double more = BandFit.pullOffSlackMm(girth, gap.value() + gap.sd());
    double wider =
        BandFit.pullOffSlackMm(girth + girthSd, gap.value())
            - BandFit.pullOffSlackMm(girth + girthSd, normal);
    return new Worked(
        Estimate.of(slack - allowed, more - slack, wider - (slack - allowed)),
        Blanks.of("gap", n.shown().length(gap.value()))
            .and("slack", n.shown().length(slack))
            .and("normal", n.shown().length(normal))
            .and("allowed", n.shown().length(allowed)));
  }

  /**
   * How much longer than the body the finished band measures: taken in by it, the band meets the
   * body unstretched. Less than that by a rounding, never more.
   */
  static Worked slack(FittingNumbers n) {
    Measured under = n.fitting().body().underbust();
    double band = n.fitting().garment().underband().mm();
    double longer = AmountWriter.shownAtMost(band - under.value().mm(), n.shown());
    return new Worked(
        new Estimate(longer, under.sdMm()),
        Blanks.of("underband", n.shown().length(band)).and("underbust", under.text()));
  }

  /** Empty where the elastic was not tested as far as it would be stretched. */
  static Optional<Worked> elastic(FittingNumbers n) {
    ElasticTest test = n.fitting().elastic().test();
    double cut = n.fitting().bandElasticCut().mm();
    Measured under = n.fitting().body().underbust();
    double girth = under.value().mm();
    double pressure = n.parameter("target-elastic-pressure");
    // What the cloth of the band pulls, the elastic need not.
    double cloth =
        DerivedFigure.BAND_CLOTH_TENSION.isGiven(n)
            ? n.figure(DerivedFigure.BAND_CLOTH_TENSION).value()
            : 0;
    double tension = BandPressure.ofKPa(pressure, girth).tensionNPerCm() - cloth;
    double extension = test.extensionAt(Math.max(0, tension));
    if (extension > test.limit()) {
      return Optional.empty();
    }
    double joining = n.parameter("elastic-joining");
    double length = test.cutLengthMm(girth, extension, joining);
    return Optional.of(
        new Worked(
            Estimate.of(cut - length, under.sdMm() / (1 + extension)),
            Blanks.of("pressure", n.shown().value(pressure, "kPa"))
                .and("extension", n.shown().percent(extension))
                .and("underbust", under.text())
                .and("joining", n.shown().length(joining))
                .and("length", n.shown().length(length))
                .and("cut", n.shown().length(cut))));
  }
}
