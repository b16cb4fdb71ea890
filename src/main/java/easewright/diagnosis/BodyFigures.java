package easewright.diagnosis;

import easewright.body.BandFit;
import easewright.body.CupGeometry;
import easewright.cloth.Estimate;
import easewright.measure.BodyMeasurements;
import easewright.measure.Measured;
import easewright.rulebook.RuleBookSource;
import java.util.Optional;

/** Derives the numbers that set the body beside what the size cut is drafted for. */
final class BodyFigures {
  private final Fitting fitting;
  private final Draft draft;
  private final RuleBookSource source;
  private final FigureWriter figures;
  private final UnitFormatter shown;

  BodyFigures(
      Fitting fitting,
      Draft draft,
      RuleBookSource source,
      FigureWriter figures,
      UnitFormatter shown) {
    this.fitting = fitting;
    this.draft = draft;
    this.source = source;
    this.figures = figures;
    this.shown = shown;
  }

  void derive() {
    girths();
    lengths();
  }

  private void girths() {
    BodyMeasurements body = fitting.body();
    Measured under = body.underbust();
    Measured bust = body.bust();
    if (under != null && bust != null) {
      double difference = bust.differenceMm(under);
      double sd = bust.differenceSdMm(under);
      figures.add(
          "bust-difference", difference, sd, "mm", "bust", bust.text(), "underbust", under.text());
      draft
          .differenceMm()
          .ifPresent(
              drafted ->
                  figures.add(
                      "cup-shortfall",
                      difference - drafted,
                      sd,
                      "mm",
                      "difference",
                      shown.length(difference),
                      "drafted",
                      shown.length(drafted)));
      volume(difference, sd);
    }
    if (under != null) {
      draft.underbustMm().ifPresent(drafted -> excess("band-shortfall", under, drafted, "drafted"));
      band(under);
    }
    if (bust != null) {
      bustStrain(bust);
    }
  }

  private void band(Measured under) {
    Optional<Estimate> strain =
        draft
            .underband()
            .map(b -> new BandFit(under.value().mm(), b.value(), under.sdMm(), b.sd()).strain());
    strain.ifPresent(
        e -> {
          figures.add(
              "band-strain",
              e.value(),
              e.sd(),
              "fraction",
              "underbust",
              under.text(),
              "underband",
              shown.length(draft.underband().orElseThrow().value()));
          draft.bandStrain().ifPresent(drafted -> overDrafted("band-strain-excess", e, drafted));
        });
  }

  private void bustStrain(Measured bust) {
    draft
        .bust()
        .map(b -> new BandFit(bust.value().mm(), b.value(), bust.sdMm(), b.sd()).strain())
        .ifPresent(
            e ->
                draft
                    .bustStrain()
                    .ifPresent(drafted -> overDrafted("bust-strain-excess", e, drafted)));
  }

  private void overDrafted(String id, Estimate strain, double drafted) {
    figures.add(
        id,
        strain.value() - drafted,
        strain.sd(),
        "fraction",
        "strain",
        shown.percent(strain.value()),
        "drafted",
        shown.percent(drafted));
  }

  private void volume(double difference, double sd) {
    Measured width = fitting.body().bustPointWidth();
    if (width == null || !(difference > 0)) {
      return;
    }
    double share = source.parameter("cup-base-share");
    double base = width.value().mm() * share;
    double step = Math.min(sd, difference / 2);
    try {
      double up = CupGeometry.fromDifference(base, difference + step).volumeMl();
      double down = CupGeometry.fromDifference(base, difference - step).volumeMl();
      figures.add(
          "cup-volume",
          CupGeometry.fromDifference(base, difference).volumeMl(),
          (up - down) / 2 * (sd / step),
          "ml",
          "base",
          shown.length(base),
          "share",
          shown.percent(share),
          "difference",
          shown.length(difference));
    } catch (IllegalArgumentException outsideTheModel) {
      // A difference too deep for a cap on this base: no volume is better than a wrong one.
      return;
    }
  }

  private void lengths() {
    BodyMeasurements body = fitting.body();
    against("bust-point-width-excess", body.bustPointWidth(), draft.bustPointWidthMm());
    against("apex-drop", body.shoulderToBustPoint(), draft.shoulderToBustPointMm());
    against("front-length-shortfall", body.shoulderToUnderbust(), draft.shoulderToUnderbustMm());
  }

  private void against(String id, Measured measured, Optional<Double> drafted) {
    if (measured != null) {
      drafted.ifPresent(mm -> excess(id, measured, mm, "measured"));
    }
  }

  private void excess(String id, Measured measured, double draftedMm, String blank) {
    figures.add(
        id,
        measured.value().mm() - draftedMm,
        measured.sdMm(),
        "mm",
        blank.equals("measured") ? "measured" : "underbust",
        measured.text(),
        "drafted",
        shown.length(draftedMm));
  }
}
