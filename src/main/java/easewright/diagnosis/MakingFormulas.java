package easewright.diagnosis;

import easewright.body.BandPressure;
import easewright.body.SeamAllowanceError;
import easewright.cloth.Estimate;
import easewright.diagnosis.Formula.Worked;
import easewright.fitting.ElasticReport;
import easewright.fitting.Making;
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
    double relaxed = n.fitting().bandElasticCut().mm() - n.parameter("elastic-joining");
    double extension = n.fitting().body().underbust().value().mm() / relaxed - 1;
    return relaxed > 0 && extension >= 0
        ? Optional.of(
            new Worked(
                elastic.test().tensionNPerCm(extension),
                Blanks.of("extension", n.shown().percent(extension))))
        : Optional.empty();
  }

  /** Of the elastic, and of the band's cloth where its tension can be told: tensions add. */
  static Worked bandPressure(FittingNumbers n) {
    Estimate elastic = n.figure(DerivedFigure.ELASTIC_TENSION);
    Optional<Estimate> cloth =
        Optional.of(DerivedFigure.BAND_CLOTH_TENSION)
            .filter(figure -> figure.isGiven(n))
            .map(n::figure);
    Measured under = n.fitting().body().underbust();
    double girth = under.value().mm();
    double tension = elastic.value() + cloth.map(Estimate::value).orElse(0.0);
    double sd = Math.hypot(elastic.sd(), cloth.map(Estimate::sd).orElse(0.0));
    String parts =
        n.source()
            .wording()
            .say(
                cloth.isPresent() ? "band-tension-of-both" : "band-tension-of-the-elastic",
                Blanks.of("elastic", n.shown().value(elastic.value(), "N/cm"))
                    .and("cloth", n.shown().value(tension - elastic.value(), "N/cm")));
    return new Worked(
        new Estimate(new BandPressure(tension, girth).kPa(), new BandPressure(sd, girth).kPa()),
        Blanks.of("tension", n.shown().value(tension, "N/cm"))
            .and("parts", parts)
            .and("girth", under.text()));
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
    return exact(n.fitting().earlier().size() + n.fitting().earlierSizes().size());
  }

  private static Worked exact(double value) {
    return new Worked(new Estimate(value, 0), Blanks.NONE);
  }
}
