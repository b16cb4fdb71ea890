package easewright.diagnosis;

import easewright.body.BandPressure;
import easewright.body.SeamAllowanceError;
import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.measure.Measured;
import easewright.wording.Blanks;
import java.util.Optional;

/** Figures about the size, the elastic, the sewing and what went before. */
final class MakingFormulas {
  private MakingFormulas() {}

  static Worked bestSize(FittingNumbers n) {
    return exact(n.sizes().chances().get(0).probability());
  }

  static Worked nextSize(FittingNumbers n) {
    return exact(n.sizes().chances().get(1).probability());
  }

  /** Empty where the elastic would hang loose, or is no longer than its join. */
  static Optional<Worked> elasticTension(FittingNumbers n) {
    ElasticReport elastic = n.fitting().elastic();
    double relaxed = elastic.cut().mm() - n.parameter("elastic-joining");
    double extension = n.fitting().body().underbust().value().mm() / relaxed - 1;
    return relaxed > 0 && extension >= 0
        ? Optional.of(
            new Worked(
                elastic.test().tensionNPerCm(extension),
                Blanks.of("extension", n.shown().percent(extension))))
        : Optional.empty();
  }

  static Worked bandPressure(FittingNumbers n) {
    Estimate tension = n.figure(DerivedFigure.ELASTIC_TENSION);
    Measured under = n.fitting().body().underbust();
    double girth = under.value().mm();
    return new Worked(
        new Estimate(
            new BandPressure(tension.value(), girth).kPa(),
            new BandPressure(tension.sd(), girth).kPa()),
        Blanks.of("tension", n.shown().value(tension.value(), "N/cm")).and("girth", under.text()));
  }

  static Worked allowanceGirthError(FittingNumbers n) {
    Making making = n.fitting().making();
    double planned =
        making.seamAllowancePlanned() != null
            ? making.seamAllowancePlanned().mm()
            : n.draft().seamAllowanceMm().orElseThrow();
    double sewn = making.seamAllowanceSewn().mm();
    int seams = seams(n);
    return new Worked(
        new Estimate(new SeamAllowanceError(seams, planned, sewn).girthChangeMm(), 0),
        Blanks.of("seams", seams)
            .and("planned", n.shown().length(planned))
            .and("sewn", n.shown().length(sewn)));
  }

  /** How many seams the girth crosses, as said or as the pattern has them. */
  static int seams(FittingNumbers n) {
    Integer said = n.fitting().making().seams();
    return said != null ? said : n.draft().seamsAround().orElseThrow();
  }

  static Worked monthsSinceOperation(FittingNumbers n) {
    return exact(n.fitting().circumstances().monthsSinceOperation());
  }

  static Worked earlierRounds(FittingNumbers n) {
    return exact(n.fitting().earlier().size());
  }

  private static Worked exact(double value) {
    return new Worked(new Estimate(value, 0), Blanks.NONE);
  }
}
